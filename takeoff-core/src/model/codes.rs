//! The code of every problem and finding: one table, with severity and meaning.
use std::borrow::Cow;
use std::fmt;

use schemars::{JsonSchema, Schema, SchemaGenerator};
use serde::{Serialize, Serializer};

use super::Severity;
use crate::units::UnitError;

macro_rules! codes {
    ($( #[doc = $meaning:literal] $severity:ident $name:ident = $text:literal, )*) => {
        /// A kind of problem or finding. It is written as its [text](Code::as_str) everywhere: `no-tile`.
        ///
        /// ```
        /// use takeoff_core::{Code, Severity};
        /// assert_eq!(Code::NoTile, "no-tile");
        /// assert_eq!(Code::NoTile.severity(), Severity::Finding);
        /// assert_eq!(Code::NoTile.meaning(), "A post that meets no tile.");
        /// assert!(Code::ALL.contains(&Code::NoTile));
        /// ```
        #[derive(Clone, Copy, Debug, PartialEq, Eq, PartialOrd, Ord, Hash)]
        #[non_exhaustive]
        pub enum Code {
            $( #[doc = $meaning] $name, )*
        }

        impl Code {
            /// Every code.
            pub const ALL: &[Code] = &[$( Code::$name, )*];

            /// The code's stable name, such as `no-tile`.
            pub const fn as_str(self) -> &'static str {
                match self { $( Code::$name => $text, )* }
            }

            /// Severity of every problem with this code.
            pub const fn severity(self) -> Severity {
                match self { $( Code::$name => Severity::$severity, )* }
            }

            /// The code's meaning in a line.
            pub const fn meaning(self) -> &'static str {
                match self { $( Code::$name => $meaning.trim_ascii(), )* }
            }
        }
    };
}

impl Code {
    /// The code of a refused quantity.
    pub(crate) fn of_unit(error: &UnitError) -> Code {
        Code::ALL.iter().copied().find(|code| code.as_str() == error.code).unwrap_or(Code::OutOfLimits)
    }
}

impl fmt::Display for Code {
    fn fmt(&self, f: &mut fmt::Formatter<'_>) -> fmt::Result {
        f.write_str(self.as_str())
    }
}

impl PartialEq<str> for Code {
    fn eq(&self, text: &str) -> bool {
        self.as_str() == text
    }
}

impl PartialEq<&str> for Code {
    fn eq(&self, text: &&str) -> bool {
        self.as_str() == *text
    }
}

impl Serialize for Code {
    fn serialize<S: Serializer>(&self, serializer: S) -> Result<S::Ok, S::Error> {
        serializer.serialize_str(self.as_str())
    }
}

impl JsonSchema for Code {
    fn inline_schema() -> bool {
        true
    }

    fn schema_name() -> Cow<'static, str> {
        "Code".into()
    }

    fn json_schema(generator: &mut SchemaGenerator) -> Schema {
        String::json_schema(generator)
    }
}

codes! {
    /// The bytes are not UTF-8.
    Error NotUtf8 = "not-utf8",
    /// The text is not JSON, or not TOML.
    Error Syntax = "syntax",
    /// `NaN` or `Infinity` in place of a number.
    Error NotANumber = "not-a-number",
    /// Larger than a job file may be.
    Error TooLarge = "too-large",
    /// Lists and objects nested too deep.
    Error TooDeep = "too-deep",
    /// An object gives one key twice.
    Error DuplicateKey = "duplicate-key",
    /// More problems than are worth listing.
    Error ManyProblems = "many-problems",
    /// More findings than are worth listing.
    Finding ManyFindings = "many-findings",

    /// `format` is not one that this version reads.
    Error UnknownFormat = "unknown-format",
    /// A field that nothing reads.
    Error UnknownField = "unknown-field",
    /// A field that has to be given.
    Error MissingField = "missing-field",
    /// Text where a list is expected, and the like.
    Error WrongType = "wrong-type",
    /// A word that is not among those the field knows.
    Error UnknownChoice = "unknown-choice",
    /// A number or a quantity beyond what makes sense.
    Error OutOfRange = "out-of-range",
    /// A service level of 1 or more, or 0 or less.
    Error ServiceLevel = "service-level",
    /// A crew's record with more tiles broken than handled.
    Error BrokenBeyondHandled = "broken-beyond-handled",
    /// A crew's record that makes no rate, where nothing else does.
    Error RecordSaysNothing = "record-says-nothing",
    /// A name that is empty or blank.
    Error EmptyName = "empty-name",
    /// A name with a character that nobody sees, such as a line break or a zero-width space.
    Error UnseenCharacter = "unseen-character",
    /// Neither or both of two ways to say one thing.
    Error OneWay = "one-way",
    /// A name that no tile, underlayment or assembly has.
    Error UnknownReference = "unknown-reference",
    /// More posts, courses, rafters or the like than a slope may have.
    Error TooMany = "too-many",

    /// A job without a slope.
    Error NoSlopes = "no-slopes",

    /// A tile that covers more than its own width.
    Error CoverWiderThanTile = "cover-wider-than-tile",
    /// A side lap that takes the whole cover width or more.
    Error SideLapTooWide = "side-lap-too-wide",
    /// A head lap that takes the whole tile or more.
    Error HeadLapTooLong = "head-lap-too-long",
    /// Pans and covers that leave a gap, or do not fit in their column.
    Error PanAndCover = "pan-and-cover",
    /// Sheets that lap by their whole width or more.
    Error SheetLapTooWide = "sheet-lap-too-wide",
    /// An item of an assembly that is called as a line of the material list which the takeoff works out.
    Error ItemIsWorkedOut = "item-is-worked-out",
    /// A lag with more thread or tip than it is long.
    Error LagThread = "lag-thread",
    /// No hole saw is large enough.
    Error NoHoleSaw = "no-hole-saw",
    /// A cone or flange that the post or the bead does not fit.
    Error FlashingTooSmall = "flashing-too-small",
    /// A least tuck or a drain that leaves no lap line a place on a deck flashing.
    Error NoTuckWindow = "no-tuck-window",
    /// A patch that can end below the upper edge of its flashing.
    Error PatchTooShort = "patch-too-short",
    /// An opening that the geometry is not made for.
    Error OpeningTooLarge = "opening-too-large",
    /// Three-course work is asked for, and nobody says that the building official allows it.
    Error ThreeCourseNotAllowed = "three-course-not-allowed",
    /// Mesh of which half is less than the edge extension.
    Error MeshTooNarrow = "mesh-too-narrow",

    /// Two slopes of one name.
    Error TwoSlopesOfOneName = "two-slopes-of-one-name",
    /// Two posts of one name on one slope.
    Error TwoPostsOfOneName = "two-posts-of-one-name",
    /// An outline with fewer than three corners.
    Error TooFewCorners = "too-few-corners",
    /// An outline without area.
    Error NoArea = "no-area",
    /// A bow-tie: an outline that crosses or touches itself.
    Error CrossingOutline = "crossing-outline",
    /// A hole that is not inside the outline.
    Error HoleOutside = "hole-outside",
    /// Two holes that overlap or touch along an edge.
    Error HolesOverlap = "holes-overlap",
    /// Not one edge for each corner.
    Error EdgeCount = "edge-count",
    /// A list that has to ascend does not.
    Error NotAscending = "not-ascending",
    /// Fitted courses need an eave.
    Error NoEave = "no-eave",
    /// No room for a course between the first nose and the ridge.
    Error NoRoomForCourses = "no-room-for-courses",
    /// No rafter lies under the slope.
    Error NoRafters = "no-rafters",
    /// Rafters nearer to each other than they are wide.
    Error RaftersOverlap = "rafters-overlap",
    /// A bond that is not made of fractions of a tile.
    Error BadFraction = "bad-fraction",
    /// Surveyed points that make no plane.
    Error NoPlane = "no-plane",
    /// An overhang that makes the outline cross itself.
    Error OverhangTooFar = "overhang-too-far",
    /// A post that does not stand on its slope.
    Error PostOffSlope = "post-off-slope",
    /// Two arrays of one name on one slope.
    Error TwoArraysOfOneName = "two-arrays-of-one-name",
    /// Two arrays in one place.
    Error ArraysOverlap = "arrays-overlap",
    /// A layout could move an array off its slope, over a hole, or over another array.
    Error ShiftTooFar = "shift-too-far",
    /// A clamp window that is upside down or beyond its module, or no clamp window at all.
    Error ClampWindow = "clamp-window",
    /// Clamp windows that overlap, or in which rails can come nearer to each other than their posts may.
    Error RailsTooNear = "rails-too-near",
    /// A zone whose corners are not its lower left and its upper right one.
    Error ZoneUpsideDown = "zone-upside-down",
    /// Rails on a slope whose rafters nobody gives.
    Error RailsWithoutRafters = "rails-without-rafters",

    /// A file that the job names was not given.
    Error MissingFile = "missing-file",
    /// A file name that leads out of the job's folder.
    Error BadFileName = "bad-file-name",
    /// A table that can't be read as CSV.
    Error BadCsv = "bad-csv",
    /// A table whose decimal mark or separator can't be told.
    Error AmbiguousCsv = "ambiguous-csv",

    /// A cell that a spreadsheet would run as a formula.
    Error FormulaCell = "formula-cell",
    /// What is no code of a currency.
    Error Currency = "currency",
    /// Money in two currencies.
    Error TwoCurrencies = "two-currencies",
    /// Packs of one item in units of different kinds.
    Error UnitOfItem = "unit-of-item",
    /// A row of a price list that stands there twice.
    Error DuplicateRow = "duplicate-row",

    /// How a table was read.
    Finding CsvReadAs = "csv-read-as",
    /// A course shows more of its tile than length less head lap.
    Finding ExposureBeyondGreatest = "exposure-beyond-greatest",
    /// A slope below the least for tile.
    Finding LowSlope = "low-slope",
    /// A low slope with a single layer of underlayment.
    Finding SingleUnderlayment = "single-underlayment",
    /// The pitch given is not that of the surveyed points.
    Finding PitchDisagrees = "pitch-disagrees",
    /// A post within a setback.
    Finding InsideSetback = "inside-setback",
    /// A setback or perimeter along a kind of edge that the slope does not have, or from holes where it has none.
    Finding NoSuchEdge = "no-such-edge",
    /// An array that does not lie on its slope, or not wholly.
    Finding ArrayOffSlope = "array-off-slope",

    /// Spares that no count suffices for, or that can't be counted.
    Error BreakageTooWide = "breakage-too-wide",
    /// More money than a sum holds.
    Error TooMuchMoney = "too-much-money",

    /// An order without a job.
    Error NoJobs = "no-jobs",
    /// Two jobs of one name in an order.
    Error TwoJobsOfOneName = "two-jobs-of-one-name",
    /// One item at two prices in the jobs of an order.
    Error PricesDiffer = "prices-differ",
    /// One name for two kinds of tile in the jobs of an order.
    Error TilesDiffer = "tiles-differ",
    /// One name for two kinds of underlayment in the jobs of an order.
    Error UnderlaymentsDiffer = "underlayments-differ",

    /// A layout of a job with neither rails nor posts.
    Error NoRails = "no-rails",
    /// A layout of a job with neither prices nor labour.
    Error NoCosts = "no-costs",
    /// A layout that weighs spares whose expected count does not exist.
    Error BreakageWithoutMean = "breakage-without-mean",
    /// Limits of an array that no layout keeps together.
    Error NoLayout = "no-layout",

    /// The laid job changes what a layout leaves alone.
    Error LayoutJob = "layout-job",
    /// The laid job changes an array in more than its place.
    Error LayoutArray = "layout-array",
    /// An array laid beyond its shift.
    Error LayoutShift = "layout-shift",
    /// An array laid off its slope or over a hole.
    Error LayoutArrayOffSlope = "layout-array-off-slope",
    /// Two arrays laid over each other.
    Error LayoutArraysOverlap = "layout-arrays-overlap",
    /// A fixed post that was moved, or that no rail stands on.
    Error LayoutFixed = "layout-fixed",
    /// A post below no array with rails that was changed.
    Error LayoutKept = "layout-kept",
    /// A post that is neither the job's nor below an array with rails.
    Error LayoutStray = "layout-stray",
    /// More or fewer rails than the array has.
    Error LayoutRails = "layout-rails",
    /// A post of another assembly than the rails ask for.
    Error LayoutAssembly = "layout-assembly",
    /// A rail outside its clamp window.
    Error LayoutClamp = "layout-clamp",
    /// A rail of fewer than two posts.
    Error LayoutFewPosts = "layout-few-posts",
    /// Two posts of a rail further apart than the greatest span.
    Error LayoutSpan = "layout-span",
    /// A rail's end further from its last post than the greatest overhang.
    Error LayoutOverhang = "layout-overhang",
    /// Two posts, or two rails, nearer to each other than the least distance.
    Error LayoutDistance = "layout-distance",
    /// Rails that take turns otherwise than the job says.
    Error LayoutStagger = "layout-stagger",
    /// A post on no rafter, or in a bay without blocking.
    Error LayoutRafter = "layout-rafter",
    /// A post off its slope or in a hole.
    Error LayoutOffSlope = "layout-off-slope",
    /// A post inside a setback.
    Error LayoutSetback = "layout-setback",
    /// A post that meets no tile.
    Error LayoutNoTile = "layout-no-tile",
    /// A laid post that severs a tile.
    Finding LayoutSevered = "layout-severed",
    /// A laid post that fails a check of its tile flashing or its height.
    Finding LayoutFailing = "layout-failing",
    /// A laid post with less than the least margin along its rafter.
    Finding LayoutThin = "layout-thin",

    /// A post that meets no tile.
    Finding NoTile = "no-tile",
    /// A tile that can't be cut in one piece.
    Finding Severed = "severed",
    /// A leaning post that does not pass its opening.
    Finding PostTooTight = "post-too-tight",
    /// A tile flashing that is tucked less than the least tuck.
    Finding TuckShort = "tuck-short",
    /// A tile flashing that covers less beside the opening than the least.
    Finding SideCoverShort = "side-cover-short",
    /// A tile flashing that is trimmed at its tile's head.
    Finding FlashingTrimmed = "flashing-trimmed",
    /// A post with less than the least margin.
    Finding ThinMargin = "thin-margin",
    /// Courses whose head lap is below the least tuck.
    Finding HeadLapBelowTuck = "head-lap-below-tuck",
    /// A deck flashing's cone that ends below the top of the tile.
    Finding ConeDoesNotClear = "cone-does-not-clear",
    /// A post that ends below the top of the tile.
    Finding PostDoesNotClear = "post-does-not-clear",
    /// A post too far from every rafter with no rafter on both sides for blocking.
    Finding NoRafterBeside = "no-rafter-beside",
    /// Deck flashings of two posts that meet.
    Finding DeckFlashingsMeet = "deck-flashings-meet",
    /// Three-course bands that meet other work.
    Finding BandsMeet = "bands-meet",
    /// A patch with no lap line above it.
    Finding NoLapLineAbove = "no-lap-line-above",
    /// Tiles set in mortar, foam or adhesive that would have to be loosened.
    Finding SetTilesCannotBeLoosened = "set-tiles-cannot-be-loosened",

    /// A patch longer than a roll.
    Finding PatchLongerThanRoll = "patch-longer-than-roll",
    /// Several posts at one point.
    Finding PostsAtOnePoint = "posts-at-one-point",
    /// A waste of an item that the work takes none of.
    Finding WasteNotUsed = "waste-not-used",
    /// More tiles to harvest than the arrays hide.
    Finding HarvestBeyondArrays = "harvest-beyond-arrays",
    /// Spares without a least expected cost.
    Finding NoLeastCost = "no-least-cost",

    /// Posts that the screening leaves out.
    Finding NotScreened = "not-screened",
    /// Uplift above the lags' resistance.
    Finding UpliftAboveResistance = "uplift-above-resistance",
    /// A lag too near to an edge, an end or another lag.
    Finding LagTooNear = "lag-too-near",
    /// Lags whose spacing the job leaves out.
    Finding LagSpacingUnknown = "lag-spacing-unknown",
    /// A pilot hole that does not fit the wood and the lag.
    Finding PilotHole = "pilot-hole",

    /// A comma in a number.
    Error CommaInNumber = "comma-in-number",
    /// Feet behind inches.
    Error FeetAfterInches = "feet-after-inches",
    /// A fraction of a foot in front of inches.
    Error FeetNotWhole = "feet-not-whole",
    /// A fraction of 1 or more behind a whole number.
    Error FractionImproper = "fraction-improper",
    /// A fraction without one of its numbers.
    Error FractionMalformed = "fraction-malformed",
    /// A fraction over zero.
    Error FractionZeroDenominator = "fraction-zero-denominator",
    /// Twelve inches or more behind feet.
    Error InchesPastAFoot = "inches-past-a-foot",
    /// A length that is not a whole number of nanometres.
    Error NotWholeNanometres = "not-whole-nanometres",
    /// A unit without a number.
    Error NumberMissing = "number-missing",
    /// A number that is not finite.
    Error NumberNotFinite = "number-not-finite",
    /// A number of too many digits.
    Error NumberTooLong = "number-too-long",
    /// A quantity beyond the limits of what is computed.
    Error OutOfLimits = "out-of-limits",
    /// No quantity at all.
    Error QuantityEmpty = "quantity-empty",
    /// A pitch over a run of zero.
    Error RunZero = "run-zero",
    /// Several values where one is expected.
    Error SeveralValues = "several-values",
    /// Text behind a quantity.
    Error TrailingText = "trailing-text",
    /// Two systems of units in one quantity.
    Error TwoSystems = "two-systems",
    /// A number without a unit.
    Error UnitMissing = "unit-missing",
    /// A unit that is not known.
    Error UnitUnknown = "unit-unknown",
}
