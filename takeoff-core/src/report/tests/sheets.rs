//! The tables as CSV, read back by a reader of its own.
use std::collections::BTreeSet;

use super::super::tables::{Values, all, posts};
use super::{HOSTILE, sample};

/// Every cell of a CSV, header apart.
fn read(csv: &str) -> (Vec<String>, Vec<Vec<String>>) {
    let mut reader = csv::Reader::from_reader(csv.as_bytes());
    let header = reader.headers().unwrap().iter().map(str::to_owned).collect();
    let rows = reader.records().map(|row| row.unwrap().iter().map(str::to_owned).collect()).collect();
    (header, rows)
}

#[test]
fn every_value_comes_back() {
    let mut numbers = 0;
    for takeoff in sample::all().into_iter().chain(HOSTILE.map(sample::named)) {
        for (name, table) in all(&takeoff) {
            let (header, rows) = read(&table.csv());
            assert_eq!(header, table.columns().iter().map(|column| column.name).collect::<Vec<_>>());
            assert_eq!(rows.len(), table.rows(), "{name}");
            for (i, column) in table.columns().iter().enumerate() {
                for (j, row) in rows.iter().enumerate() {
                    let (cell, place) = (row[i].as_str(), format!("{name}.{} row {j}", column.name));
                    match &column.values {
                        Values::Text(texts) => {
                            // Apostrophes keep text from being run: see how text is neutralised.
                            let text = texts[j].as_deref().unwrap_or_default();
                            assert_eq!(cell.replace('\'', ""), text.replace('\'', ""), "{place}");
                            assert!(
                                cell == text || text.contains(['=', '+', '-', '@', '\t', '\r']),
                                "{place}"
                            );
                        }
                        Values::Number(values) => {
                            let back = cell.parse::<f64>().ok();
                            assert_eq!(back.is_some(), values[j].is_some(), "{place}");
                            let (back, value) = (back.unwrap_or_default(), values[j].unwrap_or_default());
                            assert!((back - value).abs() <= 1e-14 * value.abs(), "{place}: {back} {value}");
                            numbers += 1;
                        }
                        Values::Money(values) => {
                            assert_eq!(cell, values[j].map_or(String::new(), |n| n.to_string()), "{place}");
                        }
                        Values::Whole(values) => assert_eq!(cell.parse().ok(), values[j], "{place}"),
                        Values::Flag(values) => assert_eq!(cell.parse().ok(), values[j], "{place}"),
                    }
                }
            }
        }
    }
    assert!(numbers > 1000, "only {numbers} numbers compared");
}

#[test]
fn no_text_starts_a_formula() {
    let mut neutralised = 0;
    for name in HOSTILE {
        let takeoff = sample::named(name);
        for (table_name, table) in all(&takeoff) {
            let (_, rows) = read(&table.csv());
            for (i, column) in table.columns().iter().enumerate() {
                for row in rows.iter().filter(|_| matches!(column.values, Values::Text(_))) {
                    let cell = &row[i];
                    assert!(!cell.starts_with(['=', '+', '-', '@', '\t', '\r']), "{table_name}: {cell:?}");
                    neutralised += usize::from(cell.starts_with('\''));
                }
            }
        }
    }
    assert!(neutralised > 0, "nothing to neutralise was tried");
}

#[test]
fn lines_end_as_rfc_4180_says() {
    let csv = posts(&sample::gable()).csv();
    assert!(csv.ends_with("\r\n"));
    // No name in that job holds a line feed, so each one ends a row.
    assert_eq!(csv.matches('\n').count(), csv.matches("\r\n").count());
}

#[test]
fn measures_name_their_unit() {
    let takeoff = sample::gable();
    for (name, table) in all(&takeoff) {
        // There the unit stands in a column of its own.
        if ["materials", "bid"].contains(&name) {
            continue;
        }
        for column in table.columns() {
            if matches!(column.values, Values::Number(_)) {
                let known = ["_mm", "_mm2", "_share", "_tiles", "_g", "_min"]
                    .iter()
                    .any(|unit| column.name.ends_with(unit));
                assert!(known, "{name}.{} has no unit in its name", column.name);
            }
        }
    }
}

#[test]
fn column_names_are_unique() {
    let takeoff = sample::gable();
    for (name, table) in all(&takeoff) {
        let names: BTreeSet<&str> = table.columns().iter().map(|column| column.name).collect();
        assert_eq!(names.len(), table.columns().len(), "{name}");
    }
}
