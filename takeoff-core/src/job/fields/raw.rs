//! A job file as somebody writes it. What is said here of a field is what its JSON Schema says.
use schemars::JsonSchema;

use super::collections::{Choice, List, Map};
use super::money::{self, Amount, Currency, Part};
use super::price_list::Prices;
use super::quantities::{
    Azimuth, ClampWindow, Distance, Gap, Pitch, Point, Position, Pressure, Run, Size, Speed, TileSize,
    Volume, Weight, WorldPoint,
};
use super::scalars::{
    Bond, Chance, Count, Factor, Flag, Format, Name, OneOrMore, ServiceLevel, Share, SpecificGravity,
    Suction, Text, Turns,
};
use super::table_field::Table;
use crate::job::parse::decode::objects;
use crate::model::{Axis, BeadPlace, Display, DriedIn, EdgeKind, Held, LapSide, Laps};

objects! {
    /// A job: the slopes of a roof, what lies on them and what goes through them.
    ///
    /// A quantity is a text with its unit (`"16 1/2 in"`, `"3 ft 4 1/2 in"`, `"168 mm"`, `"5:12"`); only zero
    /// needs none. On a slope `u` runs along the eave, left to right as seen by someone outside who looks up
    /// the slope, and `v` up the slope on the deck; all lengths are true lengths on the slope, not in plan.
    struct Job {
        /// Which job file this is: `tilepost-job/1`.
        format: Format,
        /// What the job is called in its reports.
        name: Name,
        /// Which units reports show; it changes no number. Left out: `imperial`.
        display: Option<Choice<Display>>,
        /// The kinds of roof tile, by name.
        tiles: Map<Tile>,
        /// The kinds of underlayment, by name.
        underlayments: Map<Underlayment>,
        /// The kinds of post with their flashings, fasteners and sealant, by name.
        assemblies: Option<Map<Assembly>>,
        /// The slopes of the roof, with at most 50 000 posts over all of them.
        slopes: List<Slope>,
        /// How the crew works. What is left out is assumed, and every report lists the assumptions.
        practice: Option<Practice>,
        /// Screening of the lags against wind uplift. Left out: none is made.
        screening: Option<Screening>,
        /// What the survey asked; reports list what it left unasked.
        survey: Option<Survey>,
        /// A price list: a CSV file beside the job file, a row for each pack on offer, with the columns `item` (as
        /// the material list has it), `unit`, `pack` (how much of the unit it holds), `price` and `currency`; it may
        /// have `vendor_part` (any text) and `minimum_order` (packs). Several rows of an item are several packs.
        prices: Option<Prices>,
        /// What the bid adds to the materials: labour, tax, contingency, markup.
        bid: Option<Bid>,
    }

    /// A kind of roof tile. A one-piece tile has a `width`, a two-piece tile `pan_and_cover`.
    struct Tile {
        /// From nose to head, such as `16 1/2 in`.
        length: TileSize,
        /// Overall width of a one-piece tile, such as `13 in`.
        width: Option<TileSize>,
        /// Cover width: from joint to joint, such as `12 in`. The side lap is `width` less `cover`.
        cover: TileSize,
        /// The least that a course laps over the one below, such as `3 in`. The greatest exposure is `length`
        /// less this, or half of that for a double-lap tile.
        least_head_lap: Gap,
        /// Thickness of one layer, such as `1 in`.
        thickness: Size,
        /// Weight of one tile, such as `9.6 lb`.
        weight: Option<Weight>,
        /// Whether a tile laps the course below it only, or the one below that too. Left out: `single`.
        laps: Option<Choice<Laps>>,
        /// Which side strip lies under the neighbour, as seen from outside, looking up the slope. Needed where
        /// a one-piece tile is wider than it covers.
        lap_side: Option<Choice<LapSide>>,
        /// Tiles already on hand, taken off the spares to buy. Left out: none.
        on_hand: Option<Count>,
        /// Sound tiles that the crew takes from under the arrays, where nobody sees them, taken off the spares to buy.
        /// Their places have to be kept weathertight. Left out: none.
        harvest: Option<Count>,
        /// The pieces of a two-piece tile.
        pan_and_cover: Option<PanAndCover>,
        /// How a tile is held. Tiles set in mortar, foam or adhesive can't be loosened and laid back.
        held: Choice<Held>,
        /// Nails, screws or clips that hold one tile. Left out: 1 if nailed or clipped, else none.
        fasteners_each: Option<Count>,
        /// The tile's shape across the slope. Left out: flat.
        profile: Option<Profile>,
    }

    /// The pieces of a two-piece tile: in each column a pan centred on the column, and a cover centred on
    /// each joint.
    struct PanAndCover {
        /// Overall width of a pan, such as `8 in`; not more than `cover`, which is from joint to joint.
        pan_width: TileSize,
        /// Overall width of a cover, such as `8 in`; pan and cover together are more than `cover`, or there is a gap.
        cover_width: TileSize,
        /// Pans already on hand. Left out: none.
        pans_on_hand: Option<Count>,
        /// Sound pans that the crew takes from under the arrays. Left out: none.
        pans_harvest: Option<Count>,
        /// Covers already on hand. Left out: none.
        covers_on_hand: Option<Count>,
        /// Sound covers that the crew takes from under the arrays. Left out: none.
        covers_harvest: Option<Count>,
    }

    /// The shape of a tile across the slope.
    struct Profile {
        /// Flat, a sine wave, or arcs.
        shape: Choice<Shape>,
        /// From the bottom of the wave to its top, such as `2 in`. Needed unless flat.
        rise: Option<Size>,
        /// From top to top, such as `6 in`. Needed unless flat.
        wave: Option<Size>,
    }

    /// A kind of underlayment, laid in sheets along the eave.
    struct Underlayment {
        /// Width of a sheet, such as `36 in`.
        sheet_width: Size,
        /// Lap of a sheet over the one below, such as `2 in` (`19 in` for a double layer of 36 in felt).
        head_lap: Gap,
        /// Length of a roll, such as `72 ft`.
        roll_length: Option<Run>,
        /// Whether patches may be cut from it turned by 90°. Left out: no, they lie as the sheet does.
        turnable: Option<Flag>,
        /// Whether the sheets are stuck to the deck: then no flashing is tucked under them. Left out: no.
        bonded: Option<Flag>,
        /// Whether the sheets are too old to be bent: then no flashing is tucked under them. Left out: no.
        brittle: Option<Flag>,
    }

    /// A post with its flashings, fasteners and sealant.
    struct Assembly {
        /// Diameter of the post, such as `1 1/2 in`.
        post_diameter: Size,
        /// Gap left all round between the post and the tile, such as `1/4 in`.
        clearance: Gap,
        /// Whether the post stands square to the deck or upright. Left out: `normal`.
        axis: Option<Choice<Axis>>,
        /// Diameters of the hole saws at hand: the smallest that leaves the clearance is used where the post
        /// stands square to the deck. Left out: the opening is exactly post and clearance.
        hole_saws: Option<List<Size>>,
        /// Top of the post over the deck, square to it, such as `7 in`.
        post_height: Option<Size>,
        /// Height over the deck of the surface between the two layers of a head lap. Left out: height of the
        /// batten and thickness of the tile.
        lap_surface_height: Option<Gap>,
        /// Least distance of a lag from the edge of its rafter. Left out: `1/2 in`.
        lag_edge_distance: Option<Gap>,
        /// The lag screws that hold one post, for the screening of uplift.
        lags: Option<Lags>,
        /// The flashing on the deck.
        deck_flashing: DeckFlashing,
        /// The flashing on the tile.
        top_flashing: TopFlashing,
        /// Beads of sealant.
        beads: Option<List<Bead>>,
        /// Pilot holes filled with sealant.
        pilot_holes: Option<List<PilotHoles>>,
        /// Dabs of sealant.
        dabs: Option<List<Dabs>>,
        /// Lags, washers, collars and whatever else one post takes.
        items: Option<List<Item>>,
        /// What one blocking board takes besides the board.
        blocking_items: Option<List<Item>>,
    }

    /// The lag screws of one post. They are bought as `items`; this is what the screening has to know of them.
    struct Lags {
        /// How many hold one post.
        count: OneOrMore,
        /// Diameter of the shank, such as `5/16 in`.
        diameter: Size,
        /// From under the head to the point, such as `3 1/2 in`.
        length: Size,
        /// Length of the thread, its tapered tip included. Left out: half the length and `1/2 in`, at most `6 in`
        /// (NDS appendix L).
        thread_length: Option<Size>,
        /// Length of the tapered tip. Left out: by the diameter (NDS appendix L), such as `3/16 in` of a 5/16 in lag;
        /// needed for other diameters than 1/4, 5/16, 3/8, 7/16, 1/2, 5/8 and 3/4 in.
        tip: Option<Gap>,
        /// What lies between the heads and the deck: the foot of the post, washers, shims. Left out: nothing.
        shim: Option<Gap>,
        /// From the outermost lag to the outermost across the rafter. Left out: 0, all in one line along it.
        across: Option<Gap>,
        /// From lag to lag, the nearest two. Left out: spacing and end distance are not checked, and a finding says so.
        spacing: Option<Size>,
    }

    /// The flashing on the deck: a flange with a cone.
    struct DeckFlashing {
        /// Across the slope, such as `10 in`.
        width: Size,
        /// From the post's point down to the lower edge, such as `4 in`.
        down: Size,
        /// From the post's point up to the upper edge, such as `7 in`.
        up: Size,
        /// Diameter of the cone where it stands on the flange, such as `2 in`; not less than the post.
        cone_diameter: Size,
        /// Top of the cone over the deck, such as `4 in`.
        cone_height: Option<Size>,
        /// How it is dried in: at the underlayment (tucked under the sheet above, or patched), or with
        /// three-course work, which `three_course_allowed` in `practice` has to allow. Left out: `underlayment`.
        dried_in: Option<Choice<DriedIn>>,
    }

    /// The flashing on the tile.
    struct TopFlashing {
        /// Across the slope, flat, before it is formed, such as `16 in`.
        width: Size,
        /// From the opening's centre down to the lower edge, such as `6 in`.
        down: Size,
        /// From the opening's centre up to the upper edge, such as `11 in`.
        up: Size,
        /// Whether it is formed over the tile's wave, and so covers less than its flat width. Left out: no.
        formed: Option<Flag>,
    }

    /// A bead of sealant.
    struct Bead {
        /// Where it runs: a U under the deck flange, or a ring round the post at its collar.
        r#where: Choice<BeadPlace>,
        /// Its diameter. Left out: `3/8 in`.
        diameter: Option<Size>,
    }

    /// Pilot holes filled with sealant.
    struct PilotHoles {
        /// How many.
        count: Count,
        /// Diameter of the drill, such as `3/16 in`.
        diameter: Size,
        /// How deep they are filled, such as `2 1/2 in`.
        depth: Size,
    }

    /// Dabs of sealant.
    struct Dabs {
        /// How many.
        count: Count,
        /// Volume of one, such as `2 mL`.
        volume: Volume,
    }

    /// A thing counted by the piece.
    struct Item {
        /// What it is, such as `lag 5/16 x 3 1/2 in`.
        item: Name,
        /// How many.
        count: Count,
    }

    /// One roof plane with its tile, underlayment, rafters and posts.
    struct Slope {
        /// What it is called, such as `south`.
        name: Name,
        /// How steep it is, at most 80 degrees, such as `5:12`, `22.6 deg` or `41.7 %`. Needed unless `place`
        /// gives surveyed points: then left out, it is theirs.
        pitch: Option<Pitch>,
        /// Where it stands in the world.
        place: Option<Place>,
        /// Its corners in turn, each `[u, v]`: a simple polygon, the first corner not repeated at the end.
        outline: List<Point>,
        /// What each edge is: the first runs from the first corner to the second. `null` is none of these.
        /// Left out: no edge is any.
        edges: Option<List<Option<Choice<EdgeKind>>>>,
        /// Chimneys, vents, skylights.
        holes: Option<List<Hole>>,
        /// Name of its tile.
        tile: Name,
        /// Where the courses lie.
        courses: Courses,
        /// How far tile hangs over the eaves. Left out: from the lowest eave down to the lowest noses, if they
        /// are below it.
        overhang: Option<Distance>,
        /// Where the joints lie.
        columns: Columns,
        /// Its underlayment, and where the sheets lap.
        underlayment: Sheets,
        /// The rafters. Left out: posts are not checked for wood under them.
        rafters: Option<Rafters>,
        /// Thickness of the sheathing over the rafters, such as `15/32 in`, for the screening of uplift.
        deck_thickness: Option<Gap>,
        /// The boards put in where no rafter is below a post, for the screening of uplift.
        blocking: Option<Blocking>,
        /// Battens. Left out: `3/4 in` by `1 1/2 in` if the tile is hung, else none.
        battens: Option<Battens>,
        /// The strip in which every tile is fastened, so that a tile taken up there is fastened again.
        perimeter: Option<Perimeter>,
        /// How far posts keep from edges.
        setbacks: Option<Setbacks>,
        /// Whether setbacks hold for deck flashings too, not only for the centres of posts. Left out: no.
        setbacks_hold_flashing: Option<Flag>,
        /// How many tiles are walked on. Left out: none.
        walked: Option<Count>,
        /// The posts, or a CSV file of them with the columns `name`, `assembly`, `u`, `v`; it may have `fixed` (`true` or
        /// `false`).
        posts: Option<Table<Post>>,
        /// Posts in rows and columns.
        post_grids: Option<List<PostGrid>>,
        /// The arrays of modules that the posts carry.
        arrays: Option<List<Array>>,
    }

    /// Where a slope stands in the world: its origin and azimuth, or three or more surveyed points of it.
    #[schemars(extend("oneOf" = [{ "required": ["origin", "azimuth"] }, { "required": ["points"] }]))]
    struct Place {
        /// East, north and up of `u = v = 0`.
        origin: Option<WorldPoint>,
        /// The direction down the slope, clockwise from north, such as `180 deg`.
        azimuth: Option<Azimuth>,
        /// Surveyed points of the plane, each east, north, up; three or more, not in one line.
        points: Option<List<WorldPoint>>,
    }

    /// A hole in the slope: a chimney, a vent, a skylight.
    struct Hole {
        /// What it is called.
        name: Option<Name>,
        /// Its corners in turn, each `[u, v]`, inside the slope's outline.
        outline: List<Point>,
    }

    /// Where the courses lie: measured noses, a first nose and an exposure, or fitted between eave and ridge.
    #[schemars(extend("oneOf" = [
        { "required": ["noses"] }, { "required": ["first_nose", "exposure"] }, { "required": ["overhang", "ridge_gap"] },
    ]))]
    struct Courses {
        /// Measured: where the tiles' lower edges are, going up the slope; or a CSV file with the column `nose`.
        noses: Option<Table<Position>>,
        /// Constant: where the lower edge of the lowest course is, such as `-1 1/2 in`.
        first_nose: Option<Position>,
        /// Constant: from nose to nose, such as `13 1/4 in`.
        exposure: Option<Size>,
        /// Fitted: how far the lowest course hangs over the lowest eave, such as `2 in`.
        overhang: Option<Distance>,
        /// Fitted: from the head of the top course to the highest point of the slope, such as `3 in`.
        ridge_gap: Option<Distance>,
    }

    /// Where the joints between the tiles of a course lie.
    struct Columns {
        /// Where one joint of the lowest course is, such as `0 in`.
        first_joint: Position,
        /// How far the joints of each course are moved to the right, in tiles: `straight` (not at all), `half`
        /// (every other course by half a tile), or a list of fractions for the courses from the eave up, over and over.
        bond: Bond,
    }

    /// The underlayment of a slope and its lap lines: the lower edges of all sheets but the first.
    #[schemars(extend("oneOf" = [{ "required": ["first_lap_line"] }, { "required": ["lap_lines"] }]))]
    struct Sheets {
        /// Name of the underlayment.
        kind: Name,
        /// Where the first lap line is, such as `34 in`; the others follow by sheet width less head lap.
        first_lap_line: Option<Position>,
        /// Measured lap lines, going up the slope; or a CSV file with the column `lap_line`.
        lap_lines: Option<Table<Position>>,
    }

    /// Rafters, running up the slope: evenly spaced from the first, measured one by one, or measured at both ends where
    /// they run crooked.
    #[schemars(extend("oneOf" = [
        { "required": ["first", "spacing"] }, { "required": ["at"] }, { "required": ["lines"] },
    ]))]
    struct Rafters {
        /// Centre line of the first on the left, such as `8 in`.
        first: Option<Position>,
        /// From centre to centre, such as `24 in`.
        spacing: Option<Size>,
        /// Measured centre lines, left to right; or a CSV file with the column `at`.
        at: Option<Table<Position>>,
        /// Centre lines measured at both ends, left to right; or a CSV file with the columns `lower` and `upper`.
        lines: Option<Table<RafterLine>>,
        /// How wide a rafter is, such as `1 1/2 in`.
        width: Size,
        /// Depth of a rafter, such as `5 1/2 in`, for the screening of uplift. Left out: no lag comes out of it below.
        depth: Option<Size>,
        /// Specific gravity of the wood, oven dry, for the screening of uplift: such as 0.50 for Douglas fir-larch, 0.55
        /// for southern pine, 0.43 for hem-fir, 0.42 for spruce-pine-fir (NDS).
        specific_gravity: Option<SpecificGravity>,
    }

    /// The centre line of a rafter that runs crooked.
    struct RafterLine {
        /// Where it is along the eave at the height of the slope's lowest corner, such as `2 ft 8 in`.
        lower: Position,
        /// Where it is at the height of the slope's highest corner, such as `2 ft 9 1/4 in`.
        upper: Position,
    }

    /// Battens under the heads of the courses.
    struct Battens {
        /// Height. Left out: `3/4 in`.
        height: Option<Size>,
        /// Width, down the slope. Left out: `1 1/2 in`.
        width: Option<Size>,
        /// From a tile's head down to the batten's upper edge. Left out: `0`.
        lug: Option<Gap>,
    }

    /// The strip in which every tile is fastened.
    struct Perimeter {
        /// How wide it is, such as `36 in`.
        width: Run,
        /// Along which kinds of edge.
        edges: List<Choice<EdgeKind>>,
    }

    /// How far posts keep from edges, by the kind of edge.
    struct Setbacks {
        /// From eaves.
        eave: Option<Distance>,
        /// From ridges, such as `18 in`.
        ridge: Option<Distance>,
        /// From rakes.
        rake: Option<Distance>,
        /// From hips.
        hip: Option<Distance>,
        /// From valleys.
        valley: Option<Distance>,
        /// From walls.
        wall: Option<Distance>,
        /// From the edges of holes: chimneys, vents, skylights.
        hole: Option<Distance>,
    }

    /// Blocking boards: what a lag finds in one. Their length is the clear distance between the rafters.
    struct Blocking {
        /// The face below the deck, across the board, such as `5 1/2 in`.
        width: Size,
        /// Down from the deck, such as `1 1/2 in`.
        depth: Size,
        /// Specific gravity of the wood, as that of the rafters.
        specific_gravity: SpecificGravity,
    }

    /// A post to be set.
    struct Post {
        /// What it is called, such as `A1`; no two posts of a slope have one name.
        name: Name,
        /// Name of its assembly.
        assembly: Name,
        /// Where it stands along the eave, such as `4 ft 8 in`.
        u: Position,
        /// Where it stands up the slope, on the deck, such as `3 ft 1 in`.
        v: Position,
        /// Whether a layout of posts leaves it where it is. Left out: no.
        fixed: Option<Flag>,
    }

    /// Posts in rows and columns: the post in the second row, third column of the grid `B` is called `B-2-3`.
    struct PostGrid {
        /// What the grid is called.
        name: Name,
        /// Name of the posts' assembly.
        assembly: Name,
        /// Where the lower left post stands along the eave.
        u: Position,
        /// Where the lower left post stands up the slope.
        v: Position,
        /// How many posts there are in a row, along the eave.
        columns: Count,
        /// From post to post in a row, such as `48 in`.
        column_spacing: Run,
        /// How many rows there are, going up the slope.
        rows: Count,
        /// From row to row, such as `39 in`.
        row_spacing: Run,
    }

    /// Modules in columns and rows, parallel to the slope.
    struct Array {
        /// What it is called; no two arrays of a slope have one name.
        name: Name,
        /// Where the lower left corner of the lowest left module is along the eave, such as `4 ft`.
        u: Position,
        /// Where that corner is up the slope, such as `3 ft`.
        v: Position,
        /// Width of a module as laid, along the eave, such as `44 5/8 in`.
        module_width: Size,
        /// Height of a module as laid, up the slope, such as `67 13/16 in`.
        module_height: Size,
        /// Modules side by side.
        columns: OneOrMore,
        /// Modules one above the other.
        rows: OneOrMore,
        /// From module to module along the eave, such as `3/4 in`. Needed for two columns or more.
        column_gap: Option<Gap>,
        /// From module to module up the slope, such as `3/4 in`. Needed for two rows or more.
        row_gap: Option<Gap>,
        /// How far a layout of posts may move it. Left out: not at all.
        shift: Option<Shift>,
        /// The rails that its modules are clamped to. Left out: a layout of posts leaves the array alone, and the posts
        /// below it.
        rails: Option<Rails>,
    }

    /// How far a layout of posts may move an array from where the job has it: all that it covers on the way has to be on
    /// the slope, and clear of holes and other arrays.
    struct Shift {
        /// To the left, along the eave, such as `6 in`. Left out: not at all, as with those below.
        left: Option<Distance>,
        /// To the right.
        right: Option<Distance>,
        /// Down the slope.
        down: Option<Distance>,
        /// Up the slope.
        up: Option<Distance>,
    }

    /// The rails of an array: in every row of modules one for each clamp window, as long as the array is wide. The spans
    /// and overhangs are those that the maker of the rails, or an engineer, allows for the loads of the roof.
    struct Rails {
        /// Name of the assembly of their posts.
        assembly: Name,
        /// Where modules may be clamped: windows from the lowest up, each `[from, to]` up from a module's lower edge.
        clamps: List<ClampWindow>,
        /// From post to post along a rail, at most, such as `6 ft`.
        greatest_span: Size,
        /// From the last post to the end of the rail, at most, such as `16 in`.
        greatest_overhang: Gap,
        /// From post to post along a rail, and from rail to rail, at least. Left out: posts may stand as near as they like.
        least_distance: Option<Gap>,
        /// Rails, from the lowest up, take turns in every so many rafters, so that no rafter carries them all: 2 is every
        /// other one. Left out: not, as with 1.
        stagger: Option<Turns>,
        /// Whether a post may stand in the middle between two rafters, on a blocking board. Left out: no.
        blocking: Option<Flag>,
        /// Where less is allowed, such as along the edges of the roof, where the wind is stronger.
        zones: Option<List<SpanZone>>,
    }

    /// A rectangle of the slope in which rails span less: it holds for each span and overhang that reaches into it.
    struct SpanZone {
        /// What it is called.
        name: Option<Name>,
        /// Its lower left corner.
        from: Point,
        /// Its upper right corner.
        to: Point,
        /// From post to post along a rail, at most, such as `4 ft`.
        greatest_span: Size,
        /// From the last post to the end of the rail, at most. Left out: that of the rails.
        greatest_overhang: Option<Gap>,
    }

    /// How the crew works. Whatever is left out is assumed to be the value shown here; every report lists the
    /// assumptions in force.
    struct Practice {
        /// The narrowest strip of tile that does not snap beside a cut. Left out: `1 in`.
        least_web: Option<Size>,
        /// Room for hands round the deck work: tiles that lie within it are taken up. Left out: `2 in`.
        hand_clearance: Option<Gap>,
        /// A post may land so far off its place before anything changes, or there is a finding. Left out: `1/4 in`.
        least_margin: Option<Gap>,
        /// A lap line is at least so far up the deck flashing for the sheet above to go over its flange. Left out: `1 in`.
        drain: Option<Gap>,
        /// The least of a deck flashing that is under the sheet above. Left out: `2 in`.
        deck_tuck: Option<Gap>,
        /// How far a patch goes up under the sheet above. Left out: `4 in`.
        patch_underlap: Option<Size>,
        /// How far a patch is wider than the flashing, each side. Left out: `4 in`.
        patch_side_margin: Option<Gap>,
        /// The least of a top flashing that is under the course above. Left out: `3 in`.
        least_top_tuck: Option<Gap>,
        /// The least that a top flashing covers on each side of the opening. Left out: `3 in`.
        least_side_cover: Option<Gap>,
        /// From the edge of a deck flange in to its bead. Left out: `3/4 in`.
        bead_inset: Option<Gap>,
        /// From staple to staple round a patch. Left out: `4 in`, common practice.
        staple_spacing: Option<Size>,
        /// How far from a post the nearest better place is looked for. Left out: one exposure.
        window: Option<Size>,
        /// How likely tiles are to break.
        breakage: Option<Breakage>,
        /// What the crew has seen break so far. Left out: the chances of breaking are taken as known.
        crew_record: Option<CrewRecord>,
        /// How likely the spares are to suffice: between 0 and 1, both left out. Left out: 0.95.
        service_level: Option<ServiceLevel>,
        /// What each tile short costs (a trip back, a roof left open), such as `"180.00"`, in the currency of the price
        /// list. The number of spares at the least expected cost is then told beside the one for the service level.
        cost_of_short: Option<Amount>,
        /// What a layout of posts counts for each post that severs a tile or fails a check of its flashings or its height,
        /// such as `"250.00"`, in the currency of the price list. Left out: such a place is used only where there is none
        /// without.
        cost_of_failing: Option<Amount>,
        /// New tiles that make up one severed tile. Left out: 2.
        pieces_for_severed: Option<Count>,
        /// What a cartridge of sealant holds. Left out: `10.1 fl oz`.
        cartridge: Option<Volume>,
        /// Sealant lost, as a share of what the work takes. Left out: 0.10.
        sealant_waste: Option<Share>,
        /// Material lost, as a share of the need, by item as the material list has it: `{"staple": 0.05}`. Left
        /// out: none, but for sealant, roof cement and mesh, which have their own fields. What comes in packs has the waste of its quantity, unless it has its own.
        waste: Option<Map<Share>>,
        /// What one blade cuts in tile, such as `25 m`. Left out: blades are not counted.
        blade_life: Option<Run>,
        /// Whether the building official allows three-course work on this roof: roof cement, reinforcing mesh and
        /// roof cement over the edges of a deck flashing. Left out: no.
        three_course_allowed: Option<Flag>,
        /// Width of the mesh, which is centred on the edges of the flange. Left out: `4 in`.
        mesh_width: Option<Size>,
        /// The least that the mesh goes beyond the edge of the flange. Left out: `1 1/2 in`.
        edge_extension: Option<Gap>,
        /// Thickness of one coat of roof cement. Left out: `1/8 in`.
        cement_film: Option<Size>,
        /// Coats of roof cement, the one under the mesh and the one over it. Left out: 2.
        cement_coats: Option<Count>,
        /// What a container of roof cement holds. Left out: `1 gal`.
        cement_container: Option<Volume>,
        /// Length of a roll of mesh. Left out: `150 ft`.
        mesh_roll: Option<Run>,
        /// Roof cement lost, as a share of what the work takes. Left out: 0.10.
        cement_waste: Option<Share>,
        /// Mesh lost, as a share of what the work takes. Left out: 0.10.
        mesh_waste: Option<Share>,
    }

    /// How likely one tile is to break, by what is done with it.
    struct Breakage {
        /// Taken up, cut and laid back. Left out: 0.06.
        cut: Option<Chance>,
        /// Taken up and laid back. Left out: 0.02.
        removed: Option<Chance>,
        /// Loosened in place. Left out: 0.01.
        loosened: Option<Chance>,
        /// Walked on. Left out: 0.005.
        walked: Option<Chance>,
        /// Whether a spare for a cut tile is cut too and may break in its turn. Left out: yes.
        recut: Option<Flag>,
    }

    /// What a crew has seen break on its jobs, class by class. The chances stated in `breakage` and the record make
    /// the rate together, and what is still unknown of it asks for more spares.
    struct CrewRecord {
        /// How much the chances stated in `breakage` weigh beside the record: like so many tiles handled, such as `50`.
        weight: Count,
        /// Tiles taken up, cut and laid back. Left out: none on record, as with those below.
        cut: Option<ClassRecord>,
        /// Tiles taken up and laid back.
        removed: Option<ClassRecord>,
        /// Tiles loosened in place.
        loosened: Option<ClassRecord>,
        /// Tiles walked on.
        walked: Option<ClassRecord>,
    }

    /// What a crew has seen of one class of tiles.
    struct ClassRecord {
        /// How many tiles were handled.
        handled: Count,
        /// How many of them broke.
        broken: Count,
    }

    /// Screening of the lags in withdrawal against wind uplift. It is no design: it shows its inputs and a ratio, and
    /// defers to a licensed engineer and the local code. Posts are screened that lie below an array, on a slope whose
    /// sheathing and wood are given, and whose assembly says what its `lags` are.
    struct Screening {
        /// Load duration factor. Left out: 1.6, wind (NDS table 2.3.2).
        c_d: Option<Factor>,
        /// Wet service factor. Left out: 1.0, wood of 19 % moisture or less in service; 0.7 above (NDS table 11.3.3).
        c_m: Option<Factor>,
        /// Temperature factor. Left out: 1.0, up to 100 °F; 0.8 up to 125 °F (NDS table 11.3.4).
        c_t: Option<Factor>,
        /// What uplift counts for. Left out: 0.6 (ASCE 7, combination 0.6 D + 0.6 W).
        uplift_factor: Option<Factor>,
        /// What the dead load counts for. Left out: 0.6 (ASCE 7, combination 0.6 D + 0.6 W).
        dead_factor: Option<Factor>,
        /// Weight of modules and rails for each area of the array, the part of it that presses square on the roof, such
        /// as `2.5 psf`. Left out: nothing holds down.
        dead_load: Option<Pressure>,
        /// The wind.
        wind: Wind,
    }

    /// The wind: an uplift pressure, or the published equation for arrays that lie parallel to the roof.
    #[schemars(extend("oneOf" = [{ "required": ["pressure"] }, { "required": ["equation"] }]))]
    struct Wind {
        /// Uplift on the array, square to the roof, before the load combination, such as `30 psf`.
        pressure: Option<Pressure>,
        /// What the pressure is computed from.
        equation: Option<WindEquation>,
    }

    /// `p = q_h (GCp) γ_E γ_a` with `q_h = 0.00256 Kz Kzt Kd Ke V²` (ASCE 7-16, 29.4-7 and 26.10-1): for modules parallel
    /// to the roof, not far above it, with gaps between them. The coefficients are those of the worst zone of the roof
    /// that an array reaches.
    struct WindEquation {
        /// Basic wind speed `V`, such as `115 mph`.
        speed: Speed,
        /// Exposure coefficient at the mean height of the roof, such as 0.70 or 0.85.
        kz: Factor,
        /// Topographic factor. Left out: 1.0, flat ground.
        kzt: Option<Factor>,
        /// Directionality factor. Left out: 0.85.
        kd: Option<Factor>,
        /// Ground elevation factor. Left out: 1.0.
        ke: Option<Factor>,
        /// External pressure coefficient of the roof's zone, below 0 for suction, such as -1.8.
        gcp: Suction,
        /// Array edge factor. Left out: 1.5, exposed modules; 1.0 for those that are not.
        gamma_e: Option<Factor>,
        /// Pressure equalisation factor. Left out: `1.2 − 0.4 log10 A` from 0.4 to 0.8, `A` in sq ft what the post carries.
        gamma_a: Option<Factor>,
        /// The least uplift that is taken. Left out: `16 psf` (ASCE 7-16, 30.2.2).
        least_pressure: Option<Pressure>,
    }

    /// What the bid adds to the materials. The price is made up in this order, and each sum of money rounded once:
    /// materials, tax on them, labour; contingency on these; markup on all that.
    struct Bid {
        /// Currency of the bid, such as `USD`. Left out: that of the price list.
        currency: Option<Currency>,
        /// What labour costs. Left out: the bid is of materials.
        labour: Option<Labour>,
        /// Tax on the materials, as a share. Left out: 0.
        tax: Option<Part>,
        /// Added to materials, tax and labour for what nobody foresees, as a share. Left out: 0.
        contingency: Option<Part>,
        /// Added to all that for overhead and profit, as a share. Left out: 0.
        markup: Option<Part>,
    }

    /// What labour costs.
    struct Labour {
        /// What an hour costs, such as `"68.50"`, in the currency of the bid.
        rate_per_hour: Amount,
        /// How long each action takes.
        minutes: Minutes,
    }

    /// Minutes that each action takes. What is left out is not timed: it is listed, and costs nothing in the bid.
    struct Minutes {
        /// A tile taken up and laid back.
        lift: Option<money::Minutes>,
        /// A tile loosened in place.
        loosen: Option<money::Minutes>,
        /// A sound tile taken from under an array, to be a spare.
        harvest: Option<money::Minutes>,
        /// A hole cut in a tile.
        cut_hole: Option<money::Minutes>,
        /// A notch or a corner cut out of a tile.
        cut_notch: Option<money::Minutes>,
        /// A severed tile made up from new ones.
        make_up: Option<money::Minutes>,
        /// A patch of underlayment.
        patch: Option<money::Minutes>,
        /// A deck flashing dried in with three courses.
        three_course: Option<money::Minutes>,
        /// A blocking board between two rafters.
        block: Option<money::Minutes>,
        /// A piece of batten cut out and reset.
        batten: Option<money::Minutes>,
        /// A post set, with its flashings, fasteners and sealant.
        set: Option<money::Minutes>,
    }

    /// What the survey asked. Reports list the answers, and the questions that were left unasked.
    struct Survey {
        /// Maker, age and kind of the tile.
        tile: Option<Text>,
        /// The roofer of record.
        roofer_of_record: Option<Text>,
        /// Warranties of roof and tile that stand.
        warranties: Option<Text>,
        /// Age, kind and state of the underlayment.
        underlayment: Option<Text>,
        /// Rafter size and spacing, verified from inside.
        rafters: Option<Text>,
        /// Kind and thickness of the deck.
        deck: Option<Text>,
    }
}

/// The shape of a tile across the slope.
#[derive(serde::Deserialize, JsonSchema)]
#[serde(rename_all = "snake_case")]
pub(crate) enum Shape {
    /// Flat.
    Flat,
    /// A sine wave.
    Sine,
    /// Arcs, up and down in turn.
    Arcs,
}
