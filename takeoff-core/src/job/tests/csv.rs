//! Lists out of CSV files.
use serde_json::{Value, json};

use super::{codes, good, read_with, with};
use crate::model::{Job, Problems};
use crate::units::Length;

fn posts(csv: &str) -> Result<Job, Problems> {
    let job = with(good(), &json!({ "/slopes/0/posts": { "csv": "posts.csv" } }));
    read_with(&job, &[("posts.csv", csv)])
}

fn refused(csv: &str) -> (String, String) {
    let problems = posts(csv).map(|_| ()).unwrap_err();
    assert_eq!(problems.len(), 1, "{problems:#?}");
    assert_eq!(problems[0].path, "/slopes/0/posts/csv");
    (problems[0].code.to_string(), problems[0].message.clone())
}

/// Name, u and v of the first post.
fn first(csv: &str) -> (String, Length, Length) {
    let job = posts(csv).unwrap_or_else(|problems| panic!("{csv}\n{problems:#?}"));
    let post = &job.slopes[0].posts[0];
    assert_eq!(post.path, "/slopes/0/posts/csv");
    (post.name.clone(), post.at.u, post.at.v)
}

#[test]
fn separators_and_units_are_found_out() {
    let inches = |text| Length::parse(text).unwrap();
    let at = ("A1".to_owned(), inches("4 ft 8 in"), inches("3 ft 1 1/2 in"));
    for csv in [
        "name,assembly,u,v\nA1,post-7,4 ft 8 in,3 ft 1 1/2 in\n",
        "name,assembly,u,v\r\nA1,post-7,\"4' 8\"\"\",\"3'-1 1/2\"\"\"\r\n",
        "name;assembly;u_in;v_in\nA1;post-7;56;37.5\n",
        "name;assembly;u_in;v_in\nA1;post-7;56;37,5\n",
        "name\tassembly\tu_in\tv_in\nA1\tpost-7\t56\t37 1/2\n",
        "\u{feff}V_mm, Assembly ,NAME,u_MM\n952.5, post-7 ,A1,1422.4\n\n",
        "assembly;name;v_cm;u_m\npost-7;A1;95,25;1,4224\n;;;\n",
    ] {
        assert_eq!(first(csv), at, "{csv}");
    }
}

#[test]
fn how_a_file_was_read_is_shown_back() {
    let job = posts("name;assembly;u_m;v_m\nA1;post-7;1,4224;0,9525\nA2;post-7;3;1\n").unwrap();
    assert_eq!(
        job.findings()[0].message,
        "`posts.csv` was read with semicolons between columns and decimal commas; first row name `A1`, assembly \
         `post-7`, u_m `1.4224 m`, v_m `0.9525 m`"
    );
    let job = posts("name,assembly,u,v\n").unwrap();
    assert!(job.findings()[0].message.ends_with("commas between columns and no decimals; no rows"));
    assert_eq!(job.slopes[0].posts.len(), 0);
}

#[test]
fn what_can_not_be_told_is_refused() {
    for (csv, code, part) in [
        (
            "name;assembly,u;v\nA1;post-7,1 m;1 m\n",
            "ambiguous-csv",
            "more than one of comma, semicolon and tab",
        ),
        ("name;assembly;u_mm;v_mm\nA1;post-7;1,422;952\n", "ambiguous-csv", "`1,422` may be a decimal mark"),
        ("name;assembly;u_mm;v_mm\nA1;post-7;1.422;952\n", "ambiguous-csv", "`1.422` may be a decimal mark"),
        ("name;assembly;u_mm;v_mm\nA1;post-7;1.422,5;952\n", "ambiguous-csv", "`1.422,5` has a point"),
        ("name,assembly,u_mm,v_mm\nA1,post-7,1422,4,952\n", "bad-csv", "line 2 has 5 cells, the header 4"),
        ("name,assembly,u_mm,v_mm\nA1,post-7,\"1422,4\",952\n", "comma-in-number", "line 2, column `u_mm`"),
        (
            "name,assembly,u,v\nA1,post-7,1422,952 mm\n",
            "unit-missing",
            "`posts.csv` line 2, column `u`: `1422`",
        ),
        (
            "name,assembly,u_mm,v\nA1,post-7,56 in,952 mm\n",
            "bad-csv",
            "`56 in` has a unit, and so has its column",
        ),
        ("name,assembly,u,w\nA1,post-7,1 m,1 m\n", "bad-csv", "unknown column `w`"),
        ("name,assembly,u,u_mm,v\nA1,post-7,1 m,1000,1 m\n", "bad-csv", "two columns are `u`"),
        ("name,u,v\nA1,1 m,1 m\n", "bad-csv", "there is no column `assembly`"),
        ("", "bad-csv", "there is no column `name`, `assembly`, `u`, `v`"),
        ("name,assembly,u,v\n,post-7,1 m,1 m\n", "empty-name", "line 2, column `name`"),
        ("name,assembly,u,v\nA1,post-7,11 km,1 m\n", "unit-unknown", "column `u`"),
        ("name,assembly,u,v\nA1,post-7,1 m,1 m\nA1,post-7,2 m,2 m\n", "two-posts-of-one-name", "`A1`"),
        ("name,assembly,u,v\nA1,post-7,1 m,1 m\nA2,post-7,20 m,2 m\n", "post-off-slope", "`A2`"),
        ("name,assembly,u,v\nA1,post-9,1 m,1 m\n", "unknown-reference", "`post-9`"),
    ] {
        let (found, message) = refused(csv);
        assert_eq!(found, code, "{csv}\n{message}");
        assert!(message.contains(part), "{csv}\n{message}");
    }
}

/// One stray quote made one post of three, with a line break in its name.
#[test]
fn a_quote_swallows_no_rows() {
    for (rows, part) in [
        ("\"A1,post-7,1 m,1 m\nA2,post-7,2 m,2 m\nA3\",post-7,3 m,3 m\n", "line 2: a quote is not closed"),
        ("A1,post-7,1 m,1 m\nA2,post-7,2 m,\"2 m\n", "line 3: a quote is not closed"),
        ("A1,post-7,1 m,1 m\nA2,post-7,2 m,\"2 m", "line 3: a quote is not closed"),
        ("A1,post-7,1 m,\"4' 8\"\"\r\nA2,post-7,2 m,2 m\r\n", "line 2: a quote is not closed"),
        ("\"A\"1,post-7,1 m,1 m\n", "line 2: a cell goes on behind its closing quote"),
        ("\"A\" \"1\",post-7,1 m,1 m\n", "line 2: a cell goes on behind its closing quote"),
        ("A1, \"post-7\",1 m,1 m\n", "line 2: a space stands before the quote"),
    ] {
        let (code, message) = refused(&format!("name,assembly,u,v\n{rows}"));
        assert_eq!(code, "bad-csv", "{rows}");
        assert!(message.contains(part), "{rows}\n{message}");
    }
    let (code, message) = refused("name,assembly,\"u\n,v\nA1,post-7,1 m,1 m\n");
    assert_eq!(code, "bad-csv");
    assert!(message.contains("line 1: a quote is not closed"), "{message}");
    for row in ["\"A1\" ,post-7,1 m,1 m", "A1,post-7,3' 4\",4' 8\"", "\"A1\",\"post-7\",\"3' 4\"\"\",\"1 m\""]
    {
        assert_eq!(first(&format!("name,assembly,u,v\n{row}\n")).0, "A1", "{row}");
    }
    let (name, ..) = first("name,assembly,u,v\n\"\"\"A\"\", 1\",post-7,1 m,1 m\n");
    assert_eq!(name, "\"A\", 1");
}

#[test]
fn a_mark_is_told_by_another_length_of_the_file() {
    // `1,422` alone may be a thousand and more; beside `0,95` it can't be.
    let (_, u, v) = first("name;assembly;u_m;v_m\nA1;post-7;1,422;0,95\n");
    assert_eq!((u.mm(), v.mm()), (1422.0, 950.0));
}

#[test]
fn lists_of_lengths_have_one_column_called_as_the_list() {
    let job = with(
        good(),
        &json!({
            "/slopes/0/courses": { "noses": { "csv": "noses.csv" } },
            "/slopes/0/underlayment": { "kind": "felt-30", "lap_lines": { "csv": "laps.csv" } },
            "/slopes/0/rafters": { "width": "1 1/2 in", "at": { "csv": "rafters.csv" } },
        }),
    );
    let files = |nose: &'static str| {
        [
            ("noses.csv", nose),
            ("laps.csv", "lap_line_mm\n863,6\n1727\n"),
            ("rafters.csv", "at\n8 in\n2 ft 8 in\n"),
        ]
    };
    let read = read_with(&job, &files("nose_in\n-1.5\n11.75\n25\n")).unwrap();
    let slope = &read.slopes[0];
    let inches: Vec<Length> =
        ["-1.5 in", "11.75 in", "25 in"].map(|text| Length::parse(text).unwrap()).into();
    assert_eq!(slope.noses, inches);
    assert_eq!(slope.rafters.as_ref().unwrap().lines.len(), 2);
    let problems = read_with(&job, &files("at_in\n-1.5\n")).unwrap_err();
    assert_eq!(codes(&problems), [("bad-csv", "/slopes/0/courses/noses/csv")]);
    assert!(problems[0].help.contains("`nose`"), "{}", problems[0].help);
}

#[test]
fn many_rows_are_read_and_too_many_refused() {
    let rows = |count: usize| {
        let rows: Vec<String> = (0..count).map(|i| format!("P{i},post-7,5 ft,5 ft")).collect();
        format!("name,assembly,u,v\n{}\n", rows.join("\n"))
    };
    assert_eq!(posts(&rows(10_000)).unwrap().slopes[0].posts.len(), 10_000);
    assert_eq!(refused(&rows(1_000_001)).0, "too-many");
    let job = posts(&rows(1)).unwrap();
    let built = "slope,name,assembly,u,v\n".to_owned() + &"south,A,post-7,5 ft,5 ft\n".repeat(50_001);
    assert_eq!(codes(&job.as_built("built.csv", &built).unwrap_err()), [("too-many", "")]);
}

#[test]
fn a_table_is_a_list_or_a_file() {
    for (posts, code, path) in [
        (json!({ "csv": "p.csv", "sep": ";" }), "unknown-field", "/slopes/0/posts/sep"),
        (json!({}), "missing-field", "/slopes/0/posts"),
        (json!({ "csv": 1 }), "wrong-type", "/slopes/0/posts/csv"),
        (json!("p.csv"), "wrong-type", "/slopes/0/posts"),
    ] {
        let job: Value = with(good(), &json!({ "/slopes/0/posts": posts }));
        let found = read_with(&job, &[("p.csv", "name,assembly,u,v\n")]).unwrap_err();
        assert_eq!(codes(&found), [(code, path)]);
    }
}
