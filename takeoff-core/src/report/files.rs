//! Everything a takeoff is written to.
use super::{
    document, layout_document, order_document, page, roll_plan, roof_map, shift_map, spares_chart, tables,
};
use crate::layout::Layout;
use crate::model::Display;
use crate::report::document::{Order, RollPlan, Takeoff};

/// The files of a takeoff by name, whole: `takeoff.json`, `report.html`, the tables, a roof map a slope, a
/// cutting plan an underlayment, a chart a kind of tile, the workbook.
pub fn files(takeoff: &Takeoff) -> Vec<(String, Vec<u8>)> {
    let mut files = vec![
        ("takeoff.json".to_owned(), document(takeoff).into_bytes()),
        ("report.html".to_owned(), page(takeoff).into_bytes()),
    ];
    for (name, table) in tables::all(takeoff) {
        files.push((format!("{name}.csv"), table.csv().into_bytes()));
    }
    for (number, slope) in takeoff.slopes.iter().enumerate() {
        if let Some(map) = roof_map(takeoff, &slope.name) {
            files.push((map_name(number, &slope.name), map.into_bytes()));
        }
    }
    files.extend(cutting_plans(&takeoff.rolls, &takeoff.job, takeoff.display));
    for (number, of) in takeoff.spares.iter().enumerate() {
        if let Some(chart) = spares_chart(takeoff, &of.tile.to_string()) {
            files.push((drawing_name("spares", number, &of.tile.to_string()), chart.into_bytes()));
        }
    }
    #[cfg(feature = "workbook")]
    files.push(("bid.xlsx".to_owned(), super::workbook(takeoff)));
    files
}

/// A drawing an underlayment.
fn cutting_plans(plans: &[RollPlan], of: &str, display: Display) -> impl Iterator<Item = (String, Vec<u8>)> {
    plans.iter().enumerate().map(move |(number, plan)| {
        let drawing = roll_plan(plan, number, of, display);
        (drawing_name("rolls", number, &plan.underlayment), drawing.into_bytes())
    })
}

/// The files of an order by name, whole: `order.json`, `order.csv`, a cutting plan an underlayment, and `packs.csv`
/// where there are prices.
pub fn order_files(order: &Order) -> Vec<(String, Vec<u8>)> {
    let mut files = vec![
        ("order.json".to_owned(), order_document(order).into_bytes()),
        ("order.csv".to_owned(), tables::ordered(order).csv().into_bytes()),
    ];
    let packs = order.purchase.as_ref().map(|purchase| tables::packs(purchase).csv());
    let jobs = order.jobs.join(", ");
    files.extend(cutting_plans(&order.rolls, &jobs, order.display));
    files.extend(packs.map(|packs| ("packs.csv".to_owned(), packs.into_bytes())));
    files
}

/// The files of a layout by name, whole: `layout.json`, `layout.csv`, a map an array.
pub fn layout_files(layout: &Layout) -> Vec<(String, Vec<u8>)> {
    let mut files = vec![
        ("layout.json".to_owned(), layout_document(layout).into_bytes()),
        ("layout.csv".to_owned(), tables::layout(layout).csv().into_bytes()),
    ];
    for (number, of) in layout.arrays.iter().enumerate() {
        if let Some(map) = shift_map(layout, &of.slope, &of.array) {
            files.push((drawing_name("shift", number, &of.array), map.into_bytes()));
        }
    }
    files
}

/// `roof-1-south.svg`: numbered, so that two names that differ in signs alone stay apart.
pub(super) fn map_name(number: usize, slope: &str) -> String {
    drawing_name("roof", number, slope)
}

/// Longest part of a file name that repeats a name of the job, in letters.
const LONGEST_PART: usize = 60;
/// The same in bytes: file systems limit names to 255 bytes, and to 143 where they encrypt them.
const LONGEST_PART_BYTES: usize = 120;

fn drawing_name(what: &str, number: usize, of: &str) -> String {
    let plain = |c: char| if c.is_alphanumeric() { c } else { '-' };
    let mut bytes = 0;
    let fits = |c: &char| {
        bytes += c.len_utf8();
        bytes <= LONGEST_PART_BYTES
    };
    let part: String = of.chars().map(plain).take(LONGEST_PART).take_while(fits).collect();
    format!("{what}-{}-{part}.svg", number + 1)
}
