//! A job with its posts as they were built.
use std::collections::BTreeSet;

use super::check::posts::{MOST_POSTS, Rules};
use super::check::setback::check_posts;
use super::check::slope::check_openings;
use super::fields::table_field::Cells;
use super::parse::csv_table::{Column, CsvTable, Refusal};
use super::parse::decode::{Files, Reader, quoted};
use super::parse::document::At;
use super::parse::text;
use crate::geometry::SlopePoint;
use crate::model::{Code, Job, Post, Problem, Problems};
use crate::roof::Site;

impl Job {
    /// The same job with the posts of a CSV file in place of its own: posts as built, for a comparison with the bid.
    ///
    /// `text` is the file's, `file` its name for messages. It has the columns `slope`, `name`, `assembly`, `u` and `v`,
    /// written as in a file of posts; a slope that it does not name has no posts.
    ///
    /// # Errors
    ///
    /// Everything that is wrong in the file, each with its line.
    ///
    /// # Example
    ///
    /// ```
    /// use takeoff_core::job::{EXAMPLE, Files};
    /// use takeoff_core::model::Job;
    /// let bid = Job::read(EXAMPLE, &Files::new()).unwrap();
    /// let post = &bid.slopes()[0].posts()[0];
    /// let built = bid.as_built("built.csv", "slope,name,assembly,u,v\nsouth,A1,post-7,5 ft,3 ft\n").unwrap();
    /// assert_eq!(built.slopes()[0].posts().len(), 1);
    /// let problems = bid.as_built("built.csv", "slope,name,assembly,u,v\nnorth,A1,post-7,5 ft,3 ft\n").unwrap_err();
    /// assert!(problems[0].message.starts_with("`built.csv` line 2"));
    /// ```
    pub fn as_built(&self, file: &str, text: &str) -> Result<Job, Problems> {
        let columns = ["slope", "name", "assembly"].map(Column::text).into_iter();
        let columns: Vec<Column> = columns.chain(["u", "v"].map(Column::length)).collect();
        let sheet = CsvTable::read(text, &columns).map_err(|Refusal { code, message, help }| {
            Problems::from(Problem::new(code, format!("{}: {message}", quoted(file)), help, ""))
        })?;
        let count = sheet.rows().count();
        if count as u64 > MOST_POSTS {
            let message = format!("{}: {count} posts are more than {MOST_POSTS} in one job", quoted(file));
            let help = "compare a part of the roof at a time";
            return Err(Problem::new(Code::TooMany, message, help, "").into());
        }
        // Problems name the lines of this file: it has no place in a job file.
        let (tree, _) = text::json("null").map_err(Problems::from)?;
        let files = Files::new();
        let mut reader = Reader::new(&tree, &files);
        let reading = format!("{} was read with {}", quoted(file), sheet.shown());
        reader.report(At::ROOT, Code::CsvReadAs, reading, "look whether that is how it was meant");

        let slopes: Vec<&str> = self.slopes.iter().map(|slope| slope.name.as_str()).collect();
        let assemblies: Vec<&str> = self.assemblies.iter().map(|assembly| assembly.name.as_str()).collect();
        let mut built = Built::over(self);
        for row in sheet.rows() {
            built.add(&slopes, &assemblies, &mut Cells::new(row, file, At::ROOT, &mut reader));
        }
        let job = built.job(&mut reader);
        let (errors, findings) = reader.into_reports();
        if errors.is_empty() {
            Ok(Job { findings: [job.findings, findings].concat(), ..job })
        } else {
            Err(errors.into())
        }
    }
}

/// The posts of each slope, as built.
struct Built<'a> {
    bid: &'a Job,
    rules: Vec<Rules>,
    posts: Vec<Vec<(At, Post)>>,
}

impl<'a> Built<'a> {
    fn over(bid: &'a Job) -> Built<'a> {
        let rules = bid.slopes.iter().map(|slope| Rules {
            polygon: Some(Site::of(slope, &bid.practice).outline),
            names: BTreeSet::new(),
        });
        Built { bid, rules: rules.collect(), posts: vec![Vec::new(); bid.slopes.len()] }
    }

    /// Adds the post of a row; `slopes` and `assemblies` are the names that the bid has.
    fn add(&mut self, slopes: &[&str], assemblies: &[&str], row: &mut Cells<'_, '_, '_>) {
        let slope = row.choice(0, "slope", slopes);
        let name = row.name(1);
        let assembly = row.choice(2, "assembly", assemblies);
        let (u, v) = (row.length(3), row.length(4));
        let Some(slope) = slope else { return };
        let at = u.zip(v).map(|(u, v)| SlopePoint { u, v });
        row.check(|at_row, reader| self.rules[slope].check(at_row, name.as_ref(), at, reader));
        if let (Some(name), Some(assembly), Some(at)) = (name, assembly, at) {
            let (assembly, path) = (self.bid.assemblies[assembly].clone(), format!("/slopes/{slope}/posts"));
            self.posts[slope].push((At::ROOT, Post { name, assembly, at, fixed: false, path }));
        }
    }

    /// The bid with these posts, and without what was found about its own.
    fn job(self, reader: &mut Reader<'_>) -> Job {
        let mut job = self.bid.clone();
        for (slope, posts) in job.slopes.iter_mut().zip(self.posts) {
            check_posts(&posts, &slope.setbacks, job.display, reader);
            slope.posts = posts.into_iter().map(|(_, post)| post).collect();
            check_openings(slope, &job.practice, reader, At::ROOT);
        }
        let of_posts = |path: &str| path.contains("/posts") || path.contains("/post_grids");
        job.findings.retain(|finding| !of_posts(&finding.path));
        job
    }
}
