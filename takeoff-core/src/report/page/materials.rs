//! Materials to bring; every line opens to its basis.
use super::super::markup::Markup;
use super::super::quantity::Quantities;
use super::super::words;
use super::prose::{places, prose};
use super::section::Section;
use crate::quantities::{Basis, MaterialLine};
use crate::report::document::Takeoff;
use crate::units::Unit;

/// The columns of the list.
const HEADS: [(&str, &str); 4] =
    [("item", "words"), ("need", "number"), ("waste", "number"), ("bring", "number")];

/// The material list.
pub(super) fn section(takeoff: &Takeoff) -> Section {
    Section::new("materials", "Materials to bring", |html| {
        html.tag("p").with("class", "screen").text(
            "Open a line to see what it is made of: how often, how much each time, by which rule, where.",
        );
        html.tag("table").with("class", "materials").holds(|html| {
            html.tag("caption").text("Materials to bring");
            html.tag("thead").holds(|html| {
                html.tag("tr").holds(|html| {
                    for (head, class) in HEADS {
                        html.tag("th").with("scope", "col").with("class", class).text(head);
                    }
                });
            });
            for line in &takeoff.materials {
                html.tag("tbody").holds(|html| entry(html, takeoff, line));
            }
        });
    })
    .on_new_page()
}

/// A line of the list, and under it why.
fn entry(html: &mut Markup, takeoff: &Takeoff, line: &MaterialLine) {
    let shown = Quantities(takeoff.display);
    let bring = shown.amount(line.bring, line.unit);
    let waste = if line.waste == 0.0 { String::new() } else { words::percent(line.waste) };
    html.tag("tr").holds(|html| {
        html.tag("th").with("scope", "row").text(&line.item.name());
        html.tag("td").with("class", "number").text(&shown.amount(line.need, line.unit));
        html.tag("td").with("class", "number").text(&waste);
        html.tag("td").with("class", "number bring").text(&bring);
    });
    html.tag("tr").with("class", "why").holds(|html| {
        html.tag("td").with("colspan", HEADS.len().to_string()).holds(|html| {
            html.tag("details").holds(|html| {
                html.tag("summary").text(&format!("Why {bring}?"));
                html.tag("ul").holds(|html| {
                    line.basis.iter().for_each(|basis| reason(html, takeoff, line.unit, basis));
                    if let Some(sum) = sum(line, shown) {
                        html.tag("li").with("class", "sum").text(&sum);
                    }
                });
            });
        });
    });
}

/// `12 × 1.8 fl oz = 21.4 fl oz`: which rule, and where.
fn reason(html: &mut Markup, takeoff: &Takeoff, unit: Unit, Basis { what, count, each, places: at }: &Basis) {
    let shown = Quantities(takeoff.display);
    let all = shown.amount(*count as f64 * each, unit);
    html.tag("li").holds(|html| {
        html.tag("b").text(&format!("{count} × {} = {all}", shown.amount(*each, unit)));
        html.tag("span").holds(|html| prose(html, what));
        places(html, takeoff, at);
    });
}

/// From the reasons to what is brought, where that is more than one step.
fn sum(line: &MaterialLine, shown: Quantities) -> Option<String> {
    let with_waste = line.need * (1.0 + line.waste);
    let whole = line.unit == Unit::Each && line.bring != with_waste;
    let mut steps = Vec::new();
    if line.basis.len() > 1 {
        steps.push(format!("together {}", shown.amount(line.need, line.unit)));
    }
    if line.waste != 0.0 {
        let waste = words::percent(line.waste);
        steps.push(format!("with {waste} for waste {}", shown.amount(with_waste, line.unit)));
    }
    if whole {
        steps.push(format!("whole pieces: {}", shown.amount(line.bring, line.unit)));
    }
    (!steps.is_empty()).then(|| steps.join("; "))
}
