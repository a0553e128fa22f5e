use super::*;

#[test]
fn the_plain_gable_is_read() {
    let text = include_str!("../../../fixtures/plain-gable/job.json");
    let job = Job::read(text, &Files::new()).unwrap();
    assert_eq!(job.slopes[0].posts.len(), 12);
    assert_eq!(job.slopes[0].noses.len(), 16);
    assert_eq!(job.findings(), []);
}
