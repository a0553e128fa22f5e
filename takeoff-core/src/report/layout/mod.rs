//! A layout on screen: where arrays, rails and posts go, and why, in 80 columns.
mod arrays;
mod figures;
mod limits;
mod nudges;

use super::quantity::Quantities;
use super::screen::Page;
use super::words;
use crate::layout::Layout;

/// A layout: where each array and its rails go, what that saves, what each limit costs, and single posts that had better
/// move.
///
/// # Example
///
/// ```
/// use takeoff_core::job::{EXAMPLE, Files};
/// use takeoff_core::layout::layout;
/// use takeoff_core::model::Job;
/// use takeoff_core::report;
/// let labour = r#"{ "bid": { "currency": "USD", "labour": { "rate_per_hour": "60.00", "minutes": { "set": 20 } } },"#;
/// let job = EXAMPLE.replacen('{', labour, 1);
/// let laid = layout(&Job::read(&job, &Files::new())?)?;
/// assert!(report::layout(&laid.layout).contains("20.00  USD, of it labour"));
/// # Ok::<(), takeoff_core::Problems>(())
/// ```
pub fn layout(layout: &Layout) -> String {
    let shown = Quantities(layout.display);
    let mut page = Page::titled(&format!("{}: layout of posts", layout.job));
    arrays::show(&mut page, layout, shown);
    figures::show(&mut page, layout);
    limits::show(&mut page, layout, shown);
    arrays::next_best(&mut page, layout, shown);
    nudges::show(&mut page, layout, shown);
    if !layout.unpriced.is_empty() {
        page.head("Without a price, so that it weighs nothing");
        page.text("  ", "  ", &format!("{}.", layout.unpriced.join("; ")));
    }
    findings(&mut page, layout);
    page.head("Cautions");
    layout.cautions.iter().for_each(|caution| page.text("  - ", "    ", caution));
    page.done()
}

fn findings(page: &mut Page, layout: &Layout) {
    if layout.findings.is_empty() {
        page.head("Findings: none");
        return;
    }
    page.head(&format!("Findings: {}", layout.findings.len()));
    for finding in &layout.findings {
        page.text("  - ", "    ", &format!("{}: {}.", finding.code, finding.message));
        if !finding.help.is_empty() {
            page.text("    ", "    ", &format!("Fix: {}.", finding.help));
        }
    }
}

/// `1 post at fault`: one that fails, or stands in a thin interval.
fn at_fault(posts: u64) -> String {
    format!("{} at fault", words::count(posts, "post", "posts"))
}
