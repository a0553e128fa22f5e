//! The page, read back by an XML reader.
use std::collections::BTreeSet;

use proptest::prelude::*;
use roxmltree::{Document, Node, ParsingOptions};

use super::super::{page, plain};
use super::{HOSTILE, sample};
use crate::report::document::Takeoff;

/// The page of a takeoff as a document.
fn read(html: &str) -> Document<'_> {
    Document::parse_with_options(html, ParsingOptions { allow_dtd: true, ..Default::default() }).unwrap()
}

/// The page of every sample.
fn pages(each: impl Fn(&Takeoff, &Document<'_>)) {
    for takeoff in sample::all() {
        each(&takeoff, &read(&page(&takeoff)));
    }
}

/// All text of a node as one line.
fn text(node: Node) -> String {
    let text: String = node.descendants().filter(Node::is_text).filter_map(|node| node.text()).collect();
    line(&text)
}

/// Text with single spaces, and without the backticks in which messages set what the user wrote.
fn line(text: &str) -> String {
    plain::printable(text).replace('`', "").split_whitespace().collect::<Vec<_>>().join(" ")
}

fn section<'d>(document: &'d Document<'_>, id: &str) -> Option<Node<'d, 'd>> {
    document.descendants().find(|node| node.has_tag_name("section") && node.attribute("id") == Some(id))
}

fn by_class<'d>(node: Node<'d, 'd>, class: &str) -> Vec<Node<'d, 'd>> {
    node.descendants().filter(|node| node.attribute("class") == Some(class)).collect()
}

#[test]
fn every_line_of_the_materials_opens_to_its_basis() {
    pages(|takeoff, document| {
        let materials = section(document, "materials").unwrap();
        let entries: Vec<_> = materials.descendants().filter(|node| node.has_tag_name("tbody")).collect();
        assert_eq!(entries.len(), takeoff.materials.len());
        for (entry, line_of) in entries.into_iter().zip(&takeoff.materials) {
            let head = entry.descendants().find(|node| node.has_tag_name("th")).unwrap();
            assert_eq!(text(head), line(&line_of.item.name()));
            let details = entry.descendants().find(|node| node.has_tag_name("details")).unwrap();
            let bring = text(by_class(entry, "number bring")[0]);
            let summary = details.first_element_child().unwrap();
            assert_eq!((summary.tag_name().name(), text(summary)), ("summary", format!("Why {bring}?")));
            let list = details.children().find(|node| node.has_tag_name("ul")).unwrap();
            let reasons: Vec<_> = list
                .children()
                .filter(|node| node.has_tag_name("li") && node.attribute("class").is_none())
                .map(text)
                .collect();
            assert_eq!(reasons.len(), line_of.basis.len());
            for (reason, basis) in reasons.iter().zip(&line_of.basis) {
                assert!(reason.starts_with(&format!("{} × ", basis.count)), "{reason}");
                assert!(reason.contains(&line(&basis.what)), "{reason}: {}", basis.what);
                for place in &basis.places {
                    let name = place.split_once('/').unwrap().1;
                    assert!(reason.contains(&line(name)), "{reason}: {place}");
                }
            }
        }
    });
}

#[test]
fn nothing_is_left_untold() {
    pages(|takeoff, document| {
        let told = |id: &str| section(document, id).map(text).unwrap_or_default();
        let (findings, survey) = (told("findings"), told("survey"));
        for finding in &takeoff.findings {
            assert!(findings.contains(&line(finding.code.as_str())), "{}", finding.code);
            assert!(findings.contains(&line(&finding.message)), "{}", finding.message);
            assert!(findings.contains(&line(&finding.help)), "{}", finding.help);
        }
        for answer in &takeoff.survey {
            assert!(survey.contains(&line(&answer.asks)), "{}", answer.asks);
            assert!(survey.contains(&line(answer.answer.as_deref().unwrap_or_default())), "{}", answer.asks);
        }
        for assumption in &takeoff.assumptions {
            let from = if assumption.set_by_job { "the job" } else { "the default" };
            let row = format!("{} {} {from}", line(&assumption.what), assumption.value);
            assert!(told("assumptions").contains(&row), "{row}");
        }
        for caution in &takeoff.cautions {
            assert!(told("cautions").contains(&line(caution)), "{caution}");
        }
        assert!(
            told("glance").contains(&line(&takeoff.cautions[0])),
            "the first caution stands near the top"
        );
        let open = takeoff.survey.iter().filter(|answer| answer.is_open()).count();
        let questions =
            section(document, "survey").map(|survey| by_class(survey, "open-questions")).unwrap_or_default();
        let questions = questions.iter().flat_map(Node::children).filter(|node| node.has_tag_name("li"));
        assert_eq!(questions.count(), open);
    });
}

#[test]
fn every_post_cut_tile_and_patch_is_in_its_table() {
    pages(|takeoff, document| {
        let cells = |id: &str| -> BTreeSet<String> {
            let section = section(document, id);
            let inside = section.into_iter().flat_map(|section| section.descendants());
            inside.filter(|node| ["th", "bdi"].contains(&node.tag_name().name())).map(text).collect()
        };
        let (posts, cuts, patches) = (cells("posts"), cells("cuts"), cells("deck"));
        for slope in &takeoff.slopes {
            assert!(slope.posts.iter().all(|post| posts.contains(&line(&post.name))));
            assert!(slope.cuts.iter().all(|cut| cuts.contains(&line(&cut.tile))));
            assert!(slope.patches.iter().all(|patch| patches.contains(&line(&patch.name))));
        }
    });
}

#[test]
fn the_bid_tells_every_amount_and_what_has_none() {
    pages(|takeoff, document| {
        let told = section(document, "bid").map(text);
        assert_eq!(told.is_some(), takeoff.bid.is_some());
        let (Some(told), Some(bid)) = (told, &takeoff.bid) else { return };
        assert!(told.contains(&format!("Price: {} {}", bid.totals.price, bid.currency)), "{told}");
        assert!(told.contains(&line(&bid.rounding)));
        for of in &bid.lines {
            assert!(
                told.contains(&line(&of.item.name())) && told.contains(&of.cost.to_string()),
                "{}",
                of.item
            );
            for pack in of.packs.iter().filter(|pack| pack.packs > 0) {
                let bought = format!("{} × {} at {}", pack.packs, pack.pack_shown, pack.unit_price);
                assert!(told.contains(&bought), "{bought}");
            }
        }
        for of in &bid.unpriced {
            let item = line(&of.item.name());
            assert!(told.contains(&format!("{item}: ")) && told.contains("without a price"), "{item}");
        }
        for of in &bid.labour {
            let cost = of.cost.map_or("not timed".to_owned(), |cost| cost.to_string());
            assert!(told.contains(of.action.words()) && told.contains(&cost), "{cost}");
        }
        let glance = text(section(document, "glance").unwrap());
        assert!(glance.contains(&bid.totals.price.to_string()));
    });
    assert!(sample::all().iter().any(|takeoff| takeoff.bid.is_some()), "no sample has a bid");
}

#[test]
fn the_screening_tells_posts_inputs_and_limits() {
    let mut screened = 0;
    for takeoff in sample::all() {
        let html = page(&takeoff);
        let document = read(&html);
        let Some(screening) = &takeoff.screening else {
            assert!(section(&document, "screening").is_none());
            continue;
        };
        screened += 1;
        let told = text(section(&document, "screening").unwrap());
        let texts = screening.formulas.iter().chain(&screening.not_covered).chain([&screening.note]);
        for text in texts.chain(screening.inputs.iter().flat_map(|input| [&input.what, &input.value])) {
            assert!(told.contains(&line(text)), "{text}");
        }
        for post in &screening.posts {
            assert!(told.contains(&line(&post.post)));
        }
    }
    assert!(screened > 0, "no sample is screened");
}

/// As the tiles are told: column numbers of a course, runs of neighbours as `4 to 7`.
#[test]
fn the_columns_of_the_tiles_add_up() {
    for (numbers, told) in
        [(&[5, 6, 7, 8, 12][..], "5 to 8, 12"), (&[1, 2, 9], "1, 2, 9"), (&[-1, 0, 1], "-1 to 1"), (&[], "")]
    {
        assert_eq!(super::super::words::runs(numbers), told);
    }
}

#[test]
fn links_lead_somewhere_and_ids_stand_once() {
    pages(|_, document| {
        let ids: Vec<&str> = document.descendants().filter_map(|node| node.attribute("id")).collect();
        let once: BTreeSet<&str> = ids.iter().copied().collect();
        assert_eq!(ids.len(), once.len(), "an id stands twice");
        let links: Vec<&str> = document.descendants().filter_map(|node| node.attribute("href")).collect();
        assert!(links.len() > 10);
        for link in links {
            assert!(once.contains(link.strip_prefix('#').unwrap()), "{link}");
        }
        for label in document.descendants().filter_map(|node| node.attribute("aria-labelledby")) {
            assert!(label.split(' ').all(|id| once.contains(id)), "{label}");
        }
    });
}

/// No script, nothing fetched, nothing but what HTML and SVG know to be harmless.
#[test]
fn the_page_stands_alone() {
    for takeoff in sample::all().into_iter().chain(HOSTILE.map(sample::named)) {
        let html = page(&takeoff);
        let document = read(&html);
        for node in document.descendants().filter(Node::is_element) {
            let name = node.tag_name().name();
            assert!(!["script", "link", "img", "iframe", "object", "embed", "base", "form"].contains(&name));
            for attribute in node.attributes() {
                let (name, value) = (attribute.name(), attribute.value());
                assert!(!name.starts_with("on") && !["src", "style", "srcset"].contains(&name), "{name}");
                assert!(name != "href" || value.starts_with('#'), "{value}");
            }
        }
        let style = document.descendants().find(|node| node.has_tag_name("style")).unwrap();
        let style = style.text().unwrap();
        assert!(!style.contains("url(") && !style.contains("@import"));
        assert!(!html.contains("<!--") && html.matches("</style").count() == 1);
    }
}

#[test]
fn any_name_is_written_as_text() {
    for name in HOSTILE {
        let html = page(&sample::named(name));
        let document = read(&html);
        let title = document.descendants().find(|node| node.has_tag_name("h1")).unwrap();
        assert_eq!(text(title), line(name));
    }
}

proptest! {
    #![proptest_config(ProptestConfig::with_cases(24))]

    /// Whatever people write as names: the page stays well-formed, and the name is read back whole.
    #[test]
    fn names_of_any_letters_come_back(name in "[\\PC<>&\"'`\u{202e}\u{5d0}\u{627}]{1,24}") {
        prop_assume!(!name.trim().is_empty());
        let mut takeoff = sample::gable();
        takeoff.job = name.clone();
        let html = page(&takeoff);
        let document = read(&html);
        let title = document.descendants().find(|node| node.has_tag_name("h1")).unwrap();
        prop_assert_eq!(text(title), line(&name));
    }
}

#[test]
fn a_large_job_stays_usable() {
    let takeoff = sample::commercial();
    let html = page(&takeoff);
    assert!(html.len() < 3_000_000, "{} bytes", html.len());
    let document = read(&html);
    let open_rows = document
        .descendants()
        .filter(|node| node.has_tag_name("tr"))
        .filter(|row| !row.ancestors().any(|node| node.attribute("class") == Some("long")))
        .count();
    assert!(open_rows < 200, "{open_rows} rows are not folded away");
}

#[test]
fn the_same_takeoff_gives_the_same_page() {
    assert_eq!(page(&sample::gable()), page(&sample::gable()));
}
