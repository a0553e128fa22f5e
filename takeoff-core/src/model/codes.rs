//! The stable names of what can be wrong or odd in a job file.
use super::Severity;

macro_rules! codes {
    ($( $(#[$doc:meta])* $severity:ident $name:ident = $text:literal, )*) => {
        /// A kind of problem in a job file.
        #[derive(Clone, Copy, Debug, PartialEq, Eq)]
        pub(crate) enum Code {
            $( $(#[$doc])* $name, )*
        }

        impl Code {
            pub(crate) fn text(self) -> &'static str {
                match self { $( Code::$name => $text, )* }
            }

            pub(crate) fn severity(self) -> Severity {
                match self { $( Code::$name => Severity::$severity, )* }
            }
        }

        /// The code of every problem and finding that reading a job file can give, besides those of a
        /// badly written quantity, which are in [`units::CODES`](crate::units::CODES).
        pub const CODES: &[&str] = &[$( $text, )*];
    };
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
}
