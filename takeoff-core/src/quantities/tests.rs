//! Needs against published yields and worked examples, and what must hold for any posts.
use crate::geometry::SlopePoint;
use std::sync::Arc;

use proptest::prelude::*;

use super::{Basis, MaterialLine, *};
use crate::materials::Material;
use crate::model::{Array, *};
use crate::takeoff::{CAUTIONS, HARVEST_CAUTION, Takeoff, takeoff};
use crate::testing::{assembly, flat_tile, gable_with, inches, job, three_course_assembly};
use crate::units::{Length, RealLength, Unit, Volume};

fn cubic_inches(mm3: f64) -> f64 {
    mm3 / (25.4 * 25.4 * 25.4)
}

/// The test post with beads, pilot holes, dabs and items.
fn full_assembly() -> Assembly {
    Assembly {
        beads: vec![
            Bead { place: BeadPlace::DeckFlange, diameter: inches(0.375) },
            Bead { place: BeadPlace::Collar, diameter: inches(0.25) },
        ],
        pilot_holes: vec![PilotHoles { count: 2, diameter: inches(0.25), depth: inches(3.0) }],
        dabs: vec![Dabs { count: 4, volume_mm3: 500.0 }],
        items: vec![
            Item { item: "lag 5/16 x 3 1/2 in".to_owned(), count: 2 },
            Item { item: "storm collar".to_owned(), count: 1 },
        ],
        blocking_items: vec![Item { item: "screw 1/4 x 3 in".to_owned(), count: 4 }],
        ..assembly()
    }
}

fn taken_off(job: &Job) -> Takeoff {
    takeoff(job).unwrap()
}

fn line<'a>(takeoff: &'a Takeoff, item: &str) -> &'a MaterialLine {
    takeoff.materials.iter().find(|line| line.item.name() == item).unwrap()
}

fn reasons(line: &MaterialLine) -> Vec<(u64, f64)> {
    line.basis.iter().map(|Basis { count, each, .. }| (*count, *each)).collect()
}

/// What is on hand and what is taken from under the arrays.
fn stock(on_hand: u64, harvest: u64) -> Stock {
    Stock { on_hand, harvest, harvest_path: "/tiles/flat/harvest".to_owned() }
}

/// Feet of round bead from a cartridge: `V / (π/4 · d² · 12)`, V exact from 1 US gal = 231 in³ = 128 fl oz
/// (NIST Handbook 44, Appendix C); 10.1 and 28 fl oz are common sizes.
#[test]
fn bead_yields_of_a_cartridge() {
    for (size, diameter, feet, printed_to) in [
        ("10.1 fl oz", 0.125, 123.8, 0.05),
        ("10.1 fl oz", 0.1875, 55.0, 0.05),
        ("10.1 fl oz", 0.25, 30.94, 0.005),
        ("10.1 fl oz", 0.375, 13.75, 0.005),
        ("10.1 fl oz", 0.5, 7.74, 0.005),
        ("28 fl oz", 0.25, 85.8, 0.05),
        ("28 fl oz", 0.375, 38.1, 0.05),
    ] {
        let cartridge = Volume::parse(size).unwrap().mm3();
        let yields = cartridge / bead_mm3(inches(diameter), 304.8);
        assert!((yields - feet).abs() <= printed_to, "{size}, {diameter} in: {yields}");
    }
}

/// A 1/4 in bead round a circle of 4 in: π · 4 · π/4 · 0.25² = 0.6169 in³, 29.5 rings from 10.1 fl oz.
#[test]
fn a_ring_of_bead() {
    let ring = bead_mm3(inches(0.25), ring_mm(inches(4.0)));
    assert!((cubic_inches(ring) - 0.6169).abs() < 5e-5);
    assert!((Volume::parse("10.1 fl oz").unwrap().mm3() / ring - 29.5).abs() < 0.05);
}

/// A how-to page's example with the cartridge's volume set right: 8 windows of 12 ft, bead 1/4 × 1/4 in, 10 %
/// more: 79.2 in³, which is 4.35 cartridges of 10.1 fl oz (18.227 in³), so 5.
#[test]
fn a_need_between_packs_is_rounded_up() {
    let need = 8.0 * 144.0 / 16.0 * 1.1;
    assert_eq!(whole_packs(need / cubic_inches(Volume::parse("10.1 fl oz").unwrap().mm3())), 5);
}

#[test]
fn packs_of_next_to_nothing() {
    assert_eq!(whole_packs(0.0), 0);
    assert_eq!(whole_packs(1e-12), 1);
    assert_eq!(whole_packs(0.1 + 0.2 + 0.7), 1);
    assert_eq!(whole_packs(3.0 * (1.0 + 0.9e-9)), 3);
    assert_eq!(whole_packs(3.0 * (1.0 + 1.1e-9)), 4);
}

#[test]
fn the_worked_example_of_the_u() {
    let flange = &assembly().deck_flashing;
    assert_eq!(flange_bead_mm(flange, inches(0.75)), inches(29.0).mm());
    // An inset that leaves no top leaves the sides.
    assert_eq!(flange_bead_mm(flange, inches(6.0)), inches(10.0).mm());
    assert_eq!(flange_bead_mm(flange, inches(12.0)), 0.0);
}

#[test]
fn the_sealant_of_one_post() {
    let needs = bill_of_post(&three_posts(), &full_assembly()).needs;
    let sealant: Vec<&Need> = needs.iter().filter(|need| need.material == Material::Sealant).collect();
    let volumes: Vec<f64> = sealant.iter().map(|need| cubic_inches(need.amount)).collect();
    // π/4 · 0.375² · 29 = 3.2030; π/4 · 0.25² · 1.5π = 0.2313; 2 · π/4 · 0.25² · 3 = 0.2945; 4 · 500 mm³ = 0.1220.
    for (volume, expected) in volumes.iter().zip([3.2030, 0.2313, 0.2945, 0.1220]) {
        assert!((volume - expected).abs() < 5e-5, "{volumes:?}");
    }
    assert_eq!(sealant[0].why, "`post-7`: bead of 3/8 in under the deck flange, 29 in long");
    assert_eq!(sealant[2].why, "`post-7`: pilot holes of 1/4 in filled 3 in deep, 2 a post");
}

/// Three posts: two tucked side by side (31 in), one patched by itself (39 in) and off its rafter.
fn three_posts() -> Job {
    let posts = [(56.0, 31.0), (80.0, 31.0), (140.0, 39.0)];
    let battens = Some(Battens { height: inches(0.75), width: inches(1.5), lug: inches(0.5) });
    job(vec![Slope { battens, bond: vec![Length::ZERO], ..gable_with(full_assembly(), &posts) }])
}

#[test]
fn every_line_of_a_small_job() {
    let takeoff = taken_off(&three_posts());
    let items: Vec<String> = takeoff.materials.iter().map(|line| line.item.name()).collect();
    assert_eq!(
        items,
        [
            "spare tile flat",
            "felt-30, patches",
            "sealant",
            "sealant cartridge",
            "batten nail",
            "fastener for flat",
            "lag 5/16 x 3 1/2 in",
            "screw 1/4 x 3 in",
            "staple",
            "storm collar",
            "blocking board",
        ]
    );
    // 18 × 33 in; 102 in round about at 4 in.
    let felt = line(&takeoff, "felt-30, patches");
    assert!((felt.need / 645.16 - 594.0).abs() < 1e-9);
    assert_eq!(felt.basis[0].what, "patch 18 in × 33 in");
    assert_eq!(felt.basis[0].places, ["south/P1"]);
    assert_eq!(reasons(line(&takeoff, "staple")), [(1, 26.0)]);
    assert_eq!(reasons(line(&takeoff, "lag 5/16 x 3 1/2 in")), [(3, 2.0)]);
    assert_eq!(line(&takeoff, "storm collar").basis[0].places, ["south/A1", "south/A2", "south/A3"]);
    // Rafters 24 in apart, 1 1/2 in wide; 140 in lies 12 in off both.
    assert_eq!(reasons(line(&takeoff, "screw 1/4 x 3 in")), [(1, 4.0)]);
    assert_eq!(reasons(line(&takeoff, "blocking board")), [(1, inches(22.5).mm())]);
    assert_eq!(
        line(&takeoff, "blocking board").basis[0].what,
        "between rafters 22 1/2 in apart in the clear"
    );
    // 3 posts at 3.8508 in³ in cartridges of 18.227 in³ with 10 % waste: 0.697.
    let cartridges = line(&takeoff, "sealant cartridge");
    assert!((cartridges.need - 3.0 * 3.8508 / 18.227).abs() < 1e-4);
    assert_eq!(cartridges.bring, 1.0);
    let sealant = line(&takeoff, "sealant");
    assert!((sealant.bring - 1.1 * sealant.need).abs() < 1e-9 * sealant.need);
    // Each tile taken up is laid back with its one fastener.
    assert_eq!(line(&takeoff, "fastener for flat").need, takeoff.counts.removed as f64);
    let pieces = takeoff.slopes[0].battens.len() as u64;
    assert_eq!(reasons(line(&takeoff, "batten nail")), [(pieces, 4.0)]);
}

#[test]
fn like_patches_are_one_reason() {
    let posts = [(56.0, 39.0), (140.0, 39.0), (240.0, 45.0)];
    let takeoff = taken_off(&job(vec![gable_with(full_assembly(), &posts)]));
    let felt = line(&takeoff, "felt-30, patches");
    // Two of 18 × 33 in, one of 18 × 27 in.
    let places: Vec<usize> = felt.basis.iter().map(|basis| basis.places.len()).collect();
    assert_eq!(places, [1, 2]);
    assert!((felt.need / 645.16 - (2.0 * 594.0 + 486.0)).abs() < 1e-9);
}

#[test]
fn spares_are_explained_to_the_last_tile() {
    let mut job = three_posts();
    let pieces = Pieces::One { width: inches(13.0), lap_side: LapSide::Left, stock: stock(1, 0) };
    let tile = Arc::new(Tile { pieces, ..flat_tile() });
    job.tiles = vec![tile.clone()];
    job.slopes[0].tile = tile;
    let takeoff = taken_off(&job);
    let spare = line(&takeoff, "spare tile flat");
    assert_eq!(spare.need, takeoff.spares[0].spares.spares as f64);
    assert_eq!(spare.basis.last().unwrap().what, "on hand already");
    assert_eq!(spare.basis.last().unwrap().each, -1.0);
    let handled = &takeoff.spares[0].handled;
    assert_eq!(
        spare.basis[0].what,
        format!(
            "breakage among {} cut, {} removed, {} raised and 0 walked on: at most this many with probability 0.95",
            handled.cut, handled.removed, handled.loosened
        )
    );
    // No array, so nothing to harvest: a finding, and no tile less to bring.
    let pieces = Pieces::One { width: inches(13.0), lap_side: LapSide::Left, stock: stock(0, 2) };
    let tile = Arc::new(Tile { pieces, ..flat_tile() });
    job.tiles = vec![tile.clone()];
    job.slopes[0].tile = tile;
    let bare = taken_off(&job);
    let found: Vec<&str> = bare.findings.iter().map(|finding| finding.path.as_str()).collect();
    assert!(found.contains(&"/tiles/flat/harvest"), "{found:?}");
    assert_eq!(bare.cautions.len(), CAUTIONS.len());
    // One array over 20 by 3 tiles, above all posts: harvested, with a caution.
    job.slopes[0].arrays = vec![Array {
        name: "field".to_owned(),
        at: SlopePoint { u: inches(192.0), v: inches(104.5) },
        module_width: inches(246.0),
        module_height: inches(3.0 * 13.25),
        columns: 1,
        rows: 1,
        column_gap: Length::ZERO,
        row_gap: Length::ZERO,
        shift: Default::default(),
        rails: None,
    }];
    let takeoff = taken_off(&job);
    let of_tile = &takeoff.spares[0];
    assert_eq!((of_tile.salvageable, of_tile.spares.harvested), (60, 2));
    let spare = line(&takeoff, "spare tile flat");
    assert_eq!(spare.need, line(&bare, "spare tile flat").need - 2.0);
    assert_eq!(spare.basis.last().unwrap().what, "salvaged from under the arrays");
    assert!(takeoff.findings.iter().all(|finding| finding.code != "harvest-beyond-arrays"));
    assert_eq!(takeoff.cautions.last().unwrap(), HARVEST_CAUTION);
    // More on hand than needed: none to bring, and the reasons still add up.
    let pieces = Pieces::One { width: inches(13.0), lap_side: LapSide::Left, stock: stock(500, 7) };
    let tile = Arc::new(Tile { pieces, ..flat_tile() });
    job.tiles = vec![tile.clone()];
    job.slopes[0].tile = tile;
    assert_eq!(line(&taken_off(&job), "spare tile flat").need, 0.0);
}

#[test]
fn hung_tile_is_fastened_in_the_perimeter_strip_only() {
    let mut job = three_posts();
    let tile = Arc::new(Tile { held: Held::Hung, fasteners_each: 0, ..flat_tile() });
    job.tiles = vec![tile.clone()];
    job.slopes[0].tile = tile;
    assert!(taken_off(&job).materials.iter().all(|line| line.item.name() != "fastener for flat"));
    job.slopes[0].perimeter = Some(Perimeter { width: inches(36.0), edges: vec![EdgeKind::Eave] });
    let takeoff = taken_off(&job);
    let refastened = takeoff.slopes[0].tiles.iter().filter(|tile| tile.refasten).count();
    assert_eq!(reasons(line(&takeoff, "fastener for flat")), [(refastened as u64, 1.0)]);
}

#[test]
fn a_severed_tile_takes_new_tiles_and_fasteners_for_each_piece() {
    // 3 1/2 in wide tiles, the opening with its web 4 in wide: severed.
    let mut job = job(vec![gable_with(full_assembly(), &[(52.25, 33.0)])]);
    let pieces = Pieces::One { width: inches(3.5), lap_side: LapSide::Left, stock: Stock::default() };
    let tile = Arc::new(Tile { cover: inches(3.0), pieces, ..flat_tile() });
    job.tiles = vec![tile.clone()];
    job.slopes[0].tile = tile;
    job.slopes[0].bond = vec![Length::ZERO];
    job.practice.pieces_for_severed = 3;
    let takeoff = taken_off(&job);
    assert_eq!(takeoff.counts.severed, 1);
    let spare = line(&takeoff, "spare tile flat");
    assert_eq!((spare.basis[1].count, spare.basis[1].each), (1, 3.0));
    assert_eq!(spare.basis[1].places, ["south/C3-18"]);
    let fasteners = line(&takeoff, "fastener for flat");
    assert!(fasteners.basis.iter().any(|basis| (basis.count, basis.each) == (1, 3.0)
        && basis.what == "tile replaced by 3 new pieces, 3 each"));
    assert_eq!(fasteners.need, takeoff.counts.removed as f64 - 1.0 + 3.0);
}

/// Two posts with three-course work and one without.
fn three_course_job() -> Job {
    let mut job = job(vec![gable_with(full_assembly(), &[(56.0, 39.0), (140.0, 39.0), (240.0, 45.0)])]);
    let assembly = Arc::new(three_course_assembly());
    job.slopes[0].posts[..2].iter_mut().for_each(|post| post.assembly = assembly.clone());
    job
}

#[test]
fn three_course_work_takes_cement_and_mesh_and_no_felt() {
    let mut job = three_course_job();
    let takeoff = taken_off(&job);
    assert_eq!((takeoff.counts.three_course, takeoff.counts.patched), (2, 1));
    // Flange 10 × 11 in, mesh 4 in: 128 in², 32 in³ of cement, 40 in of mesh a post.
    let cement = line(&takeoff, "roof cement");
    assert!((cubic_inches(cement.need) - 64.0).abs() < 1e-9 && same(cement.bring, 1.1 * cement.need));
    assert_eq!(
        cement.basis[0].what,
        "`post-7, three-course`: bands 4 in wide round a flange of 10 in × 11 in, open below: 0.89 sq ft, 2 coats of \
         1/8 in"
    );
    assert_eq!(cement.basis[0].places, ["south/A1", "south/A2"]);
    // 64 in³ · 1.1 of a gallon of 231 in³.
    let containers = line(&takeoff, "roof cement, containers");
    assert!((containers.need - 64.0 / 231.0).abs() < 1e-9);
    assert_eq!((containers.bring, containers.waste), (1.0, 0.1));
    assert_eq!(containers.basis[0].what, "35.46 fl oz of roof cement in containers of 128.00 fl oz");
    assert_eq!(reasons(line(&takeoff, "reinforcing mesh")), [(2, inches(40.0).mm())]);
    assert_eq!(line(&takeoff, "reinforcing mesh, rolls").bring, 1.0);
    // The one patch and its staples are the third post's: 18 × 27 in, 90 in round.
    assert!((line(&takeoff, "felt-30, patches").need / 645.16 - 486.0).abs() < 1e-9);
    assert_eq!(reasons(line(&takeoff, "staple")), [(1, 23.0)]);

    // 70.4 in³ and 88 in with their waste, in containers of 16 in³ and rolls of 44 in: 4.4, and exactly 2.
    job.practice.three_course.container_mm3 = 16.0 * 16_387.064;
    job.practice.three_course.roll = inches(44.0);
    let takeoff = taken_off(&job);
    assert_eq!(line(&takeoff, "roof cement, containers").bring, 5.0);
    assert_eq!(line(&takeoff, "reinforcing mesh, rolls").bring, 2.0);
}

#[test]
fn no_three_course_work_no_cement() {
    let takeoff = taken_off(&three_posts());
    let three_course =
        [Material::RoofCement, Material::CementContainers, Material::Mesh, Material::MeshRolls];
    assert!(takeoff.materials.iter().all(|line| !three_course.contains(&line.item)));
}

/// Items of the assembly, in a job of three posts.
fn three_posts_with(items: &[(&str, u32)]) -> Job {
    let items = items.iter().map(|&(item, count)| Item { item: item.to_owned(), count }).collect();
    let assembly = Arc::new(Assembly { items, ..full_assembly() });
    let mut job = three_posts();
    job.assemblies = vec![assembly.clone()];
    job.slopes[0].posts.iter_mut().for_each(|post| post.assembly = assembly.clone());
    job
}

#[test]
fn an_item_called_like_a_plain_count_adds_to_it() {
    let mut job = three_posts_with(&[("staple", 5), ("saw blade", 1), ("fastener for flat", 2)]);
    job.practice.blade_life = Some(inches(1000.0));
    job.practice.waste.insert("staple".to_owned(), 0.1);
    let takeoff = taken_off(&job);
    let mut names: Vec<String> = takeoff.materials.iter().map(|line| line.item.name()).collect();
    names.sort();
    names.dedup();
    assert_eq!(names.len(), takeoff.materials.len());
    // Five a post, and 26 of the patch: 41, with a tenth more 45.1.
    let staple = line(&takeoff, "staple");
    assert_eq!((reasons(staple), staple.need, staple.bring), (vec![(3, 5.0), (1, 26.0)], 41.0, 46.0));
    // One a post, and the part of one that the cuts wear out.
    let blade = line(&takeoff, "saw blade");
    let worn = takeoff.counts.blade_path.mm() / inches(1000.0).mm();
    assert!(worn > 0.0 && worn < 1.0);
    assert_eq!((blade.need, blade.bring), (3.0 + worn, 4.0));
    let fasteners = line(&takeoff, "fastener for flat");
    assert_eq!(fasteners.need, 6.0 + takeoff.counts.removed as f64);
}

#[test]
fn an_item_called_like_another_line_is_refused() {
    for name in [
        "spare tile flat",
        "felt-30, patches",
        "felt-30, rolls",
        "roof cement",
        "roof cement, containers",
        "reinforcing mesh",
        "reinforcing mesh, rolls",
        "sealant",
        "sealant cartridge",
        "blocking board",
    ] {
        let job = three_posts_with(&[("lag", 2), (name, 1)]);
        let problems = takeoff(&job).unwrap_err();
        let told: Vec<(&str, &str)> = problems.iter().map(|of| (of.code.as_str(), &*of.path)).collect();
        assert_eq!(told, [("item-is-worked-out", "/assemblies/post-7/items/1/item")], "{name}");
    }
}

/// The bills of posts, boards, patches, batten pieces and tiles, one by one, make up that of the job.
#[test]
fn the_bill_of_a_job_is_the_sum_of_its_works() {
    let job = three_posts();
    let takeoff = taken_off(&job);
    let bill = job_bill(&job, &takeoff.slopes, &takeoff.spares);
    let amount = |material: &Material, work: Work| {
        let of_work = bill.entries.iter().filter(|entry| entry.work == work && entry.material == *material);
        of_work.map(Entry::amount).sum::<f64>()
    };
    for need in bill_of_post(&job, &full_assembly()).needs {
        let of_all = bill_of_post(&job, &full_assembly()).needs;
        let each: f64 = of_all.iter().filter(|of| of.material == need.material).map(|of| of.amount).sum();
        assert!(same(amount(&need.material, Work::Post), 3.0 * each), "{}", need.material);
    }
    let [screws] = &bill_of_blocking(&job, &full_assembly()).needs[..] else { panic!("one item") };
    assert_eq!(amount(&screws.material, Work::Blocking), 4.0);
    let patch = &takeoff.slopes[0].patches[0];
    assert_eq!(amount(&Material::Felt("felt-30".to_owned()), Work::Patch), patch.area.mm2());
    assert_eq!(amount(&Material::Staple, Work::Patch), patch.staples as f64);
    assert!(bill.entries.iter().all(|entry| entry.work != Work::Saw), "no blade has a life");
    // Lines of the list are these entries, by material.
    for line in takeoff.materials.iter().filter(|line| line.packs_of.is_none()) {
        let of_line = bill.entries.iter().filter(|entry| entry.material == line.item);
        let sum: f64 = of_line.map(Entry::amount).sum();
        assert!(matches!(line.item, Material::SpareTile(_)) || sum == line.need, "{}", line.item);
    }
}

/// A sum over a job may be longer than any one length of it.
#[test]
fn a_blade_path_of_more_than_10_km_shows_whole() {
    let mut job = three_posts();
    job.practice.blade_life = Some(Length::from_nm(25_000 * Length::MM.nm()));
    job.display = Display::Metric;
    let mut slopes = taken_off(&job).slopes;
    slopes[0].cuts[0].blade_path = RealLength::from_mm(12e6);
    slopes[0].cuts.truncate(1);
    let blades = blades::blades(&job, &slopes).unwrap();
    assert_eq!(blades.what, "12000000 mm cut in tile, a blade each 25000 mm");
    assert_eq!((blades.count, blades.each), (1, 480.0)); // 12 km ÷ 25 m
}

#[test]
fn no_posts_no_needs() {
    let takeoff = taken_off(&job(vec![gable_with(full_assembly(), &[])]));
    assert!(takeoff.materials.iter().all(|line| line.need == 0.0), "{:?}", takeoff.materials);
}

fn some_posts() -> impl Strategy<Value = Vec<(f64, f64)>> {
    prop::collection::vec((100_i32..2000, 60_i32..1500), 0..12)
        .prop_map(|posts| posts.iter().map(|&(u, v)| (f64::from(u) / 8.0, f64::from(v) / 8.0)).collect())
}

/// A job in which every post left of 130 in has three-course work.
fn job_of_both(posts: &[(f64, f64)]) -> Job {
    let mut slope = gable_with(full_assembly(), posts);
    let assembly = Arc::new(three_course_assembly());
    let left = slope.posts.iter_mut().filter(|post| post.at.u < inches(130.0));
    left.for_each(|post| post.assembly = assembly.clone());
    job(vec![slope])
}

fn needs(posts: &[(f64, f64)]) -> Vec<(String, Unit, f64, f64)> {
    let takeoff = taken_off(&job_of_both(posts));
    takeoff.materials.into_iter().map(|line| (line.item.name(), line.unit, line.need, line.bring)).collect()
}

/// Equal but for the last digits of a sum.
fn same(a: f64, b: f64) -> bool {
    (a - b).abs() <= 1e-12 * a.abs().max(b.abs())
}

proptest! {
    #![proptest_config(ProptestConfig::with_cases(64))]

    #[test]
    fn a_need_is_the_sum_of_its_reasons(posts in some_posts()) {
        let takeoff = taken_off(&job_of_both(&posts));
        for line in &takeoff.materials {
            let sum: f64 = line.basis.iter().map(|basis| basis.count as f64 * basis.each).sum();
            prop_assert!(same(sum, line.need));
            prop_assert!(line.bring >= line.need);
            prop_assert!(line.unit != Unit::Each || line.bring.fract() == 0.0);
            for basis in &line.basis {
                prop_assert!(basis.places.is_empty() || basis.places.len() as u64 == basis.count);
            }
        }
    }

    #[test]
    fn the_order_of_posts_changes_no_need(posts in some_posts()) {
        let mut turned = posts.clone();
        turned.reverse();
        let (one, other) = (needs(&posts), needs(&turned));
        prop_assert_eq!(one.len(), other.len());
        for (a, b) in one.iter().zip(&other) {
            prop_assert_eq!((&a.0, a.1), (&b.0, b.1));
            prop_assert!(same(a.2, b.2) && same(a.3, b.3), "{a:?} {b:?}");
        }
    }

    #[test]
    fn a_far_post_never_lowers_a_need(posts in some_posts(), v in 60_i32..1500) {
        // The others stand below 250 in of u; this one at 420 in.
        let mut more = posts.clone();
        more.push((420.0, f64::from(v) / 8.0));
        let after = needs(&more);
        for (item, _, need, bring) in needs(&posts) {
            let line = after.iter().find(|line| line.0 == item);
            prop_assert!(line.is_some_and(|line| line.2 >= need && line.3 >= bring), "{item}");
        }
    }
}
