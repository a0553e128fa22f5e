//! The parts of a job that a layout leaves unchanged.
use super::codes::{ARRAY, JOB};
use crate::model::{Array, Code, Job, Problem, Slope};

const HELP: &str = "a layout moves arrays with rails and sets the posts below them; everything else stays";

/// The differences between a job and the laid-out job besides posts and the places of arrays.
///
/// Each comparison names all fields of its type. A field added to the model does not compile until it is compared here or
/// left out on purpose.
pub(super) fn differences(job: &Job, laid: &Job) -> Vec<Problem> {
    let problem = |code: Code, path: String, what: String| {
        Problem::new(code, format!("the laid-out job has {what}"), HELP, path)
    };
    if !same_job(job, laid) || job.slopes.len() != laid.slopes.len() {
        let what = "another practice, other tiles, assemblies, prices or slopes".to_owned();
        return vec![problem(JOB, String::new(), what)];
    }
    let mut all = Vec::new();
    for (index, (slope, laid)) in job.slopes.iter().zip(&laid.slopes).enumerate() {
        let path = format!("/slopes/{index}");
        if !same_slope(slope, laid) {
            all.push(problem(JOB, path.clone(), format!("another slope in place of `{}`", slope.name)));
        }
        if slope.arrays.len() != laid.arrays.len() {
            all.push(problem(ARRAY, path.clone(), format!("more or fewer arrays on `{}`", slope.name)));
        }
        for (index, (array, laid)) in slope.arrays.iter().zip(&laid.arrays).enumerate() {
            if !same_modules(array, laid) {
                let what = format!("another array in place of `{}`", array.name);
                all.push(problem(ARRAY, format!("{path}/arrays/{index}"), what));
            }
        }
    }
    all
}

/// Whether two jobs are the same, their names, slopes and findings left out.
fn same_job(a: &Job, b: &Job) -> bool {
    let Job {
        name: _,
        display,
        tiles,
        assemblies,
        slopes: _,
        practice,
        screening,
        prices,
        bid,
        survey,
        assumptions,
        findings: _,
    } = a;
    *display == b.display
        && *tiles == b.tiles
        && *assemblies == b.assemblies
        && *practice == b.practice
        && *screening == b.screening
        && *prices == b.prices
        && *bid == b.bid
        && *survey == b.survey
        && *assumptions == b.assumptions
}

/// Whether two slopes are the same, their posts and arrays left out.
fn same_slope(a: &Slope, b: &Slope) -> bool {
    let Slope {
        name,
        pitch,
        place,
        outline,
        edges,
        holes,
        tile,
        noses,
        overhang,
        first_joint,
        bond,
        underlayment,
        lap_lines,
        rafters,
        deck_thickness,
        blocking,
        battens,
        perimeter,
        setbacks,
        walked,
        posts: _,
        arrays: _,
    } = a;
    *name == b.name
        && *pitch == b.pitch
        && *place == b.place
        && *outline == b.outline
        && *edges == b.edges
        && *holes == b.holes
        && *tile == b.tile
        && *noses == b.noses
        && *overhang == b.overhang
        && *first_joint == b.first_joint
        && *bond == b.bond
        && *underlayment == b.underlayment
        && *lap_lines == b.lap_lines
        && *rafters == b.rafters
        && *deck_thickness == b.deck_thickness
        && *blocking == b.blocking
        && *battens == b.battens
        && *perimeter == b.perimeter
        && *setbacks == b.setbacks
        && *walked == b.walked
}

/// Whether two arrays have the same modules and, without rails, the same place. The rules for rails and shift are the job's
/// alone.
fn same_modules(given: &Array, laid: &Array) -> bool {
    let Array { name, at, module_width, module_height, columns, rows, column_gap, row_gap, shift: _, rails } =
        given;
    *name == laid.name
        && (rails.is_some() || *at == laid.at)
        && *module_width == laid.module_width
        && *module_height == laid.module_height
        && *columns == laid.columns
        && *rows == laid.rows
        && *column_gap == laid.column_gap
        && *row_gap == laid.row_gap
}
