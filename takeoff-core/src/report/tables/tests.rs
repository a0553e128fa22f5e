//! Cells as a spreadsheet may take them.
use super::Table;

#[test]
fn no_cell_begins_as_a_formula_under_any_separator() {
    for (text, plain) in [
        ("lag 5/16 x 3 1/2 in", "lag 5/16 x 3 1/2 in"),
        ("A-1; B-2, +", "A-1; B-2, '+"),
        ("=1+1", "'=1+1"),
        (" =1+1", " '=1+1"),
        ("A;=1+1", "A;'=1+1"),
        ("A1; @SUM(A1)", "A1; '@SUM(A1)"),
        ("A\t-1", "A\t'-1"),
        ("A\r\n+1", "A\r\n'+1"),
        ("A;\"=1\"", "A;\"'=1\""),
        ("＝1", "'＝1"),
        ("\tA", "'\tA"),
        ("\r=1", "'\r'=1"),
    ] {
        let csv = Table::from_rows(vec![text]).text("name", |text| text).text("empty", |_| "").done().csv();
        let mut reader = csv::Reader::from_reader(csv.as_bytes());
        assert_eq!(&reader.records().next().unwrap().unwrap()[0], plain, "{text:?}");
        // Whatever a reader splits at, no part begins a formula.
        for part in csv.split([',', ';', '\t', '"', '\r', '\n']) {
            assert!(!part.trim_start().starts_with(['=', '+', '-', '@', '＝']), "{text:?}: {part:?}");
        }
    }
}

#[test]
fn text_with_another_separator_is_quoted_and_numbers_are_not() {
    let rows = vec![("A1; A2", -1.5), ("A\tB", 2.0), ("4' 8\"", 0.0), ("plain", 1.0)];
    let table = Table::from_rows(rows).text("name", |row| row.0).number("u_mm", |row| row.1).done();
    assert_eq!(table.csv(), "name,u_mm\r\n\"A1; A2\",-1.5\r\n\"A\tB\",2\r\n\"4' 8\"\"\",0\r\nplain,1\r\n");
}
