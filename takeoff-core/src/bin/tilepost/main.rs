//! The command: job files in, takeoffs out.
//!
//! Data goes to standard output, everything else to standard error. Exit status: 0 done, 1 the job has problems, 2
//! wrong usage or a file that can't be read or written, 3 a comparison found changes. Ctrl-C and `SIGTERM` end the
//! command as they end any other. Files are written last, so none is written where standard output is full. A reader of
//! standard output that goes away, and a standard error that is closed or full, change neither files nor status.
mod check;
mod compare;
mod console;
mod diagnostics;
mod input;
mod interrupt;
mod layout;
mod location;
mod order;
mod output_file;
mod output_folder;
mod record;
mod source_spans;
mod staging;
mod takeoff;
mod takeoffs;

use std::fmt::Display;
use std::path::{Path, PathBuf};
use std::process::ExitCode;

use clap::{Parser, Subcommand};

/// Posts through an existing tile roof: which tiles are cut and taken up, what the deck work takes, what to buy.
///
/// An estimate from the measurements you give. Structure, waterproofing and fall protection follow the local code and
/// licensed practice.
#[derive(Parser)]
#[command(name = "tilepost", version, arg_required_else_help = true)]
struct Command {
    #[command(subcommand)]
    verb: Verb,
}

#[derive(Subcommand)]
enum Verb {
    /// The whole takeoff: a summary on screen; tables, roof maps and the workbook in a folder.
    ///
    /// Example: tilepost takeoff fixtures/plain-gable/job.json --out out
    Takeoff {
        /// The job file, JSON or TOML.
        job: PathBuf,
        /// The folder to write takeoff.json, report.html, the tables (.csv), the roof maps (.svg) and bid.xlsx to: a new
        /// one, or one that an earlier run wrote, which is replaced whole.
        #[arg(long, value_name = "DIR")]
        out: Option<PathBuf>,
        /// Print the takeoff as JSON in place of the summary.
        #[arg(long)]
        json: bool,
    },
    /// Every problem in a job file at once: where it is and what mends it.
    ///
    /// Example: tilepost check fixtures/plain-gable/job.json
    Check {
        /// The job file, JSON or TOML.
        job: PathBuf,
        /// Print the problems as JSON.
        #[arg(long)]
        json: bool,
    },
    /// Where the posts of the job's arrays go so that they cost least, and why.
    ///
    /// The laid job is a job file that `tilepost takeoff` reads. Files that it names are copied beside it.
    ///
    /// Example: tilepost layout fixtures/least-cost-arrays/job.json --out laid/job.json --report laid
    Layout {
        /// The job file, JSON or TOML. Its arrays have `rails`, and `shift` where they may be moved.
        job: PathBuf,
        /// The job file to write, JSON: arrays moved, posts set. It replaces only an unchanged job file of an earlier run.
        #[arg(long, value_name = "JOB2")]
        out: Option<PathBuf>,
        /// The folder to write layout.json, layout.csv and a map of each array's cost over its shift (.svg) to: a new one,
        /// or one that an earlier run wrote, which is replaced whole.
        #[arg(long, value_name = "DIR")]
        report: Option<PathBuf>,
        /// Print the layout and the laid job as JSON in place of the text.
        #[arg(long)]
        json: bool,
    },
    /// One order for several jobs: needs added up before they are rounded to packs, spares pooled by tile.
    ///
    /// Example: tilepost order fixtures/plain-gable/job.json fixtures/screened-arrays/job.json
    Order {
        /// The job files, JSON or TOML.
        #[arg(required = true)]
        jobs: Vec<PathBuf>,
        /// The folder to write order.json and order.csv to: a new one, or one that an earlier run wrote, which is
        /// replaced whole.
        #[arg(long, value_name = "DIR")]
        out: Option<PathBuf>,
        /// Print the order as JSON in place of the text.
        #[arg(long)]
        json: bool,
    },
    /// What changed between the bid and what was built: posts, totals, material lines.
    ///
    /// Exit status 3 says that something changed.
    ///
    /// Example: tilepost compare fixtures/plain-gable/job.json fixtures/plain-gable/built.csv
    Compare {
        /// The job file as bid, JSON or TOML.
        bid: PathBuf,
        /// The job file as built; or a CSV file of its posts with the columns slope, name, assembly, u, v.
        as_built: PathBuf,
        /// Print the comparison as JSON.
        #[arg(long)]
        json: bool,
    },
    /// The JSON Schema of the job file.
    ///
    /// Example: tilepost schema > job.schema.json
    Schema,
}

/// Outcome other than status 0.
enum Failure {
    /// The job has problems, already reported.
    Problems,
    /// The two takeoffs differ.
    Changed,
    /// A file can't be read or written.
    File(String),
    /// A signal arrived while files were written.
    Interrupted(i32),
}

impl Failure {
    /// A file or folder can't be read; the reason says what to do about it.
    fn read(path: &Path, reason: impl Display) -> Failure {
        Failure::File(format!("can't read `{}`: {reason}", path.display()))
    }

    /// A file or folder can't be written; the reason says what to do about it.
    fn write(path: &Path, reason: impl Display) -> Failure {
        Failure::File(format!("can't write `{}`: {reason}", path.display()))
    }
}

fn main() -> ExitCode {
    let done = match Command::parse().verb {
        Verb::Takeoff { job, out, json } => takeoff::takeoff(&job, out.as_deref(), json),
        Verb::Check { job, json } => check::check(&job, json),
        Verb::Compare { bid, as_built, json } => compare::compare(&bid, &as_built, json),
        Verb::Layout { job, out, report, json } => {
            layout::layout(&job, out.as_deref(), report.as_deref(), json)
        }
        Verb::Order { jobs, out, json } => order::order(&jobs, out.as_deref(), json),
        Verb::Schema => console::print(&takeoff_core::api::schema_json()),
    };
    match done {
        Ok(()) => ExitCode::SUCCESS,
        Err(Failure::Problems) => ExitCode::from(1),
        Err(Failure::Changed) => ExitCode::from(3),
        Err(Failure::File(message)) => {
            console::report(format_args!("tilepost: {message}\n"));
            ExitCode::from(2)
        }
        Err(Failure::Interrupted(signal)) => {
            interrupt::end_by(signal);
            ExitCode::from(2)
        }
    }
}
