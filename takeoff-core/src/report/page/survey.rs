//! Questions of the survey, answered and open.
use super::super::markup::Markup;
use super::section::Section;
use crate::report::document::{SurveyAnswer, Takeoff};

/// Open questions first, then the answers.
pub(super) fn section(takeoff: &Takeoff) -> Option<Section> {
    if takeoff.survey.is_empty() {
        return None;
    }
    let (open, answered): (Vec<_>, Vec<_>) = takeoff.survey.iter().partition(|answer| answer.is_open());
    Some(Section::new("survey", "Survey", |html| {
        if !open.is_empty() {
            html.tag("h3").text("Not yet asked");
            html.tag("ul").with("class", "open-questions").holds(|html| {
                for question in &open {
                    html.tag("li").text(&question.asks);
                }
            });
        }
        if !answered.is_empty() {
            html.tag("h3").text("Asked");
            html.tag("dl").holds(|html| answered.iter().for_each(|answer| answer_of(html, answer)));
        }
    }))
}

fn answer_of(html: &mut Markup, answer: &SurveyAnswer) {
    html.tag("dt").text(&answer.asks);
    html.tag("dd").text(answer.answer.as_deref().unwrap_or_default());
}
