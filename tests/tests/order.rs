//! One order for several jobs.
#![allow(clippy::unwrap_used, reason = "a test fails by panicking")]
use takeoff_core::materials::Material;
use takeoff_core::units::{Length, Unit};
use takeoff_core::{Files, Job, Order, Ordered, Takeoff, api, order, takeoff};
use tilepost_tests::{Case, command};

fn case(name: &str) -> Case {
    Case::all().unwrap().into_iter().find(|case| case.name == name).unwrap()
}

/// A fixture's job under another name, with something in it written otherwise.
fn job(fixture: &str, name: &str, from: &str, to: &str) -> (Job, Takeoff) {
    let (text, files) = case(fixture).job().unwrap();
    let mut document: serde_json::Value = serde_json::from_str(&text.replacen(from, to, 1)).unwrap();
    document["name"] = name.into();
    let job = Job::read(&document.to_string(), &files).unwrap();
    let takeoff = takeoff(&job).unwrap();
    (job, takeoff)
}

fn gable(name: &str) -> (Job, Takeoff) {
    job("plain-gable", name, "", "")
}

fn ordered(jobs: &[(Job, Takeoff)]) -> Result<Order, Vec<String>> {
    let jobs: Vec<_> = jobs.iter().map(|(job, takeoff)| Ordered { job, takeoff }).collect();
    order(&jobs).map_err(|problems| problems.into_iter().map(|problem| problem.code.to_string()).collect())
}

#[test]
fn an_order_for_one_job_is_what_the_job_needs() {
    for case in Case::all().unwrap() {
        let (text, files) = case.job().unwrap();
        let job = Job::read(&text, &files).unwrap();
        let takeoff = takeoff(&job).unwrap();
        let order = ordered(&[(job, takeoff.clone())]).unwrap();
        assert_eq!(order.materials.len(), takeoff.materials.len(), "{}", case.name);
        for line in &takeoff.materials {
            let same = order.materials.iter().find(|other| other.item == line.item).unwrap();
            assert_eq!((same.need, same.bring), (line.need, line.bring), "{}: {}", case.name, line.item);
        }
        let (bid, bought) = (takeoff.bid.as_ref(), order.purchase.as_ref());
        let costs = (bid.map(|bid| &bid.totals.materials), bought.map(|bought| &bought.materials));
        assert!(bought.is_none() || costs.0 == costs.1, "{}", case.name);
    }
}

#[test]
fn needs_are_added_up_before_they_are_rounded() {
    let jobs = ["one", "two", "three"].map(gable);
    let order = ordered(&jobs).unwrap();
    for line in &order.materials {
        let sum: f64 = line.basis.iter().map(|basis| basis.count as f64 * basis.each).sum();
        assert!((sum - line.need).abs() <= 1e-9 * sum.abs(), "{}", line.item);
        if line.unit == Unit::Each {
            assert!(line.bring >= line.need * (1.0 + line.waste) * (1.0 - 1e-9) && line.bring.fract() == 0.0);
        }
    }
    let cartridges = |lines: &[takeoff_core::quantities::MaterialLine]| {
        lines.iter().find(|line| line.item == Material::SealantCartridges).unwrap().bring
    };
    // 2.85 cartridges and a tenth a job: 3.14, so 4; three jobs 9.4, so 10 and not 12.
    assert_eq!((cartridges(&jobs[0].1.materials), cartridges(&order.materials)), (4.0, 10.0));
}

#[test]
fn spares_are_pooled() {
    let jobs: Vec<_> = (0..6).map(|number| gable(&format!("job {number}"))).collect();
    let order = ordered(&jobs).unwrap();
    let [flat] = order.spares.as_slice() else { panic!("one kind of tile") };
    assert_eq!((flat.apart, flat.jobs.len()), (6 * 8, 6));
    assert!(flat.spares.spares < flat.apart, "{} tiles for six jobs", flat.spares.spares);
    assert!(flat.spares.stockout_probability <= 1.0 - order.service_level + 1e-12);
    assert!(
        (flat.spares.expected.unwrap() - 6.0 * jobs[0].1.spares[0].spares.expected.unwrap()).abs() < 1e-9
    );
}

#[test]
fn patches_of_all_jobs_are_cut_together() {
    let jobs = [gable("one"), gable("two"), job("screened-arrays", "three", "", "")];
    let order = ordered(&jobs).unwrap();
    let [felt] = order.rolls.as_slice() else { panic!("one kind of felt") };
    let apart: Length =
        jobs.iter().flat_map(|(_, takeoff)| &takeoff.rolls).map(|of| of.plan.length_used).sum();
    assert!(felt.plan.length_bound <= felt.plan.length_used && felt.plan.length_used <= apart);
    let pieces: usize =
        jobs.iter().flat_map(|(_, takeoff)| &takeoff.rolls).map(|plan| plan.pieces.len()).sum();
    assert_eq!(felt.pieces.len(), pieces);
    assert!(felt.pieces.iter().any(|piece| piece.patch == "two/south/P1"));
}

#[test]
fn the_order_of_the_jobs_changes_no_need() {
    let mut jobs =
        [gable("one"), job("screened-arrays", "two", "", ""), job("three-course-porch", "three", "", "")];
    let there = ordered(&jobs).unwrap();
    jobs.reverse();
    let back = ordered(&jobs).unwrap();
    assert_eq!(there.materials.len(), back.materials.len());
    for line in &there.materials {
        let other = back.materials.iter().find(|other| other.item == line.item).unwrap();
        let close = |one: f64, two: f64| (one - two).abs() <= 1e-9 * one.abs();
        assert!(close(line.need, other.need) && close(line.bring, other.bring), "{}", line.item);
    }
}

#[test]
fn what_does_not_go_together_is_refused() {
    let refused = |jobs: &[(Job, Takeoff)]| ordered(jobs).unwrap_err();
    assert_eq!(refused(&[]), ["no-jobs"]);
    assert_eq!(refused(&[gable("one"), gable("one")]), ["two-jobs-of-one-name"]);
    let longer = job("plain-gable", "two", "\"16 1/2 in\"", "\"17 in\"");
    assert_eq!(refused(&[gable("one"), longer]), ["tiles-differ"]);
    let narrower = job("plain-gable", "two", "\"36 in\"", "\"35 in\"");
    assert_eq!(refused(&[gable("one"), narrower]), ["underlayments-differ"]);

    let (text, mut files) = case("plain-gable").job().unwrap();
    let text = text.replacen("Fernhill Lane 12", "two", 1);
    let prices = files.get_mut("prices.csv").unwrap();
    *prices = prices.replacen("3.85", "3.95", 1);
    let dearer = Job::read(&text, &files).unwrap();
    let taken = takeoff(&dearer).unwrap();
    assert_eq!(refused(&[gable("one"), (dearer, taken)]), ["prices-differ"]);
    let prices = files.get_mut("prices.csv").unwrap();
    *prices = prices.replace("USD", "CAD");
    let abroad = Job::read(&text.replace("USD", "CAD"), &files).unwrap();
    let taken = takeoff(&abroad).unwrap();
    assert_eq!(refused(&[gable("one"), (abroad, taken)]), ["two-currencies"]);
}

#[test]
fn the_command_orders() {
    let jobs = ["plain-gable", "screened-arrays"].map(case);
    let run = |json: &[&str]| {
        command().arg("order").args(jobs.each_ref().map(Case::path)).args(json).output().unwrap()
    };
    let texts: Vec<(String, Files)> = jobs.iter().map(|case| case.job().unwrap()).collect();
    let printed = run(&["--json"]);
    assert_eq!(printed.status.code(), Some(0));
    assert!(String::from_utf8(printed.stdout).unwrap() == api::order_json(&texts));

    let folder = std::env::temp_dir().join(format!("tilepost-order-{}", std::process::id()));
    assert_eq!(run(&["--out", folder.to_str().unwrap()]).status.code(), Some(0));
    for file in ["order.json", "order.csv", "packs.csv"] {
        assert!(folder.join(file).metadata().unwrap().len() > 100, "{file}");
    }
    std::fs::remove_dir_all(folder).unwrap();

    let twice = command().arg("order").args([jobs[0].path(), jobs[0].path()]).output().unwrap();
    assert_eq!(twice.status.code(), Some(1));
    assert!(String::from_utf8_lossy(&twice.stderr).contains("two jobs are called"));
}
