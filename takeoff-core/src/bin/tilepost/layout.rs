//! `tilepost layout`: where the posts of a job's arrays go.
use std::collections::BTreeSet;
use std::path::{Path, PathBuf};

use takeoff_core::{
    Job, LaidJob, Layout, Problems, api, layout as lay_out, report, write_back, write_back_toml,
};

use crate::input::{JobFile, Notation};
use crate::location::{beside, folded, resolved};
use crate::output_file::OutputFile;
use crate::output_folder::OutputFolder;
use crate::{Failure, console, diagnostics, input};

pub(crate) fn layout(
    path: &Path,
    out: Option<&Path>,
    report_to: Option<&Path>,
    json: bool,
) -> Result<(), Failure> {
    let file = JobFile::read(path)?;
    let inputs = file.inputs();
    if let Some(out) = out {
        check_is_json(out)?;
    }
    let out = out.map(|out| OutputFile::new(out, &inputs)).transpose()?;
    let folder = report_to.map(|folder| OutputFolder::new(folder, "layout", &inputs)).transpose()?;
    let found = find(&file);
    if let Err(problems) = &found {
        diagnostics::report(&file, problems);
    }
    let outputs = match &found {
        Ok((layout, job)) => Some(Outputs::new(&file, layout, job, out, folder)?),
        Err(_) => None,
    };
    if json {
        console::print(&api::layout_answer(&found))?;
    }
    let (layout, _) = found.map_err(|_| Failure::Problems)?;
    if !json {
        console::print(&report::layout(&layout))?;
    }
    outputs.map_or(Ok(()), |outputs| outputs.write())
}

fn find(file: &JobFile) -> Result<(Layout, LaidJob), Problems> {
    let job = file.job.as_ref().map_err(Clone::clone)?;
    let found = lay_out(job)?;
    let laid_job = match file.notation {
        Notation::Json => write_back(&file.text, job, &found.job),
        Notation::Toml => write_back_toml(&file.text, job, &found.job),
    };
    Ok((found.layout, laid_job?))
}

fn check_is_json(out: &Path) -> Result<(), Failure> {
    if !out.extension().is_some_and(|extension| extension.eq_ignore_ascii_case("toml")) {
        return Ok(());
    }
    Err(Failure::write(out, "it would be read as TOML, and the laid job is JSON; let its name end in .json"))
}

/// The laid job with copies of the files that it names, and the report.
///
/// A laid job that goes into the folder of the report is part of that set.
#[derive(Default)]
struct Outputs {
    folder: Option<OutputFolder>,
    /// Files of the folder, by name.
    set: Vec<(String, Vec<u8>)>,
    /// The laid job outside the folder, where files of the user's may be beside it.
    file: Option<OutputFile>,
    bytes: Vec<u8>,
    copies: Vec<(PathBuf, Vec<u8>)>,
}

impl Outputs {
    fn new(
        source: &JobFile,
        layout: &Layout,
        job: &LaidJob,
        out: Option<OutputFile>,
        folder: Option<OutputFolder>,
    ) -> Result<Outputs, Failure> {
        let mut outputs = Outputs::default();
        if folder.is_some() {
            outputs.set = report::layout_files(layout);
        }
        if let Some(out) = out {
            let text = report::laid_document(job);
            let names = Job::files_named(&text);
            if let Some(folder) = folder.as_ref().filter(|folder| folder.name_of(out.path()).is_some()) {
                let name_of = |path: &Path| folder.name_of(path).ok_or_else(|| outside(path));
                outputs.set.push((name_of(out.path())?, text.into_bytes()));
                for name in names {
                    let copy = name_of(&beside(out.path(), &name))?;
                    outputs.set.push((copy, input::bytes(&beside(&source.path, &name))?));
                }
            } else {
                outputs.bytes = text.into_bytes();
                outputs.copies = copies(&source.path, out.path(), &names)?;
                outputs.file = Some(out);
            }
        }
        if let Some(folder) = &folder {
            folder.check_names(outputs.set.iter().map(|(name, _)| name.as_str()))?;
        }
        outputs.folder = folder;
        Ok(outputs)
    }

    fn write(&self) -> Result<(), Failure> {
        if let Some(folder) = &self.folder {
            folder.write(&self.set)?;
        }
        if let Some(file) = &self.file {
            file.write(&self.bytes, &self.copies)?;
        }
        Ok(())
    }
}

fn outside(path: &Path) -> Failure {
    Failure::write(path, "a link leads out of the folder; remove it")
}

/// Copies of the files that the laid job names, except those that are beside it already.
fn copies(job: &Path, out: &Path, names: &[String]) -> Result<Vec<(PathBuf, Vec<u8>)>, Failure> {
    let mut copies = Vec::new();
    let mut targets = BTreeSet::from([folded(&resolved(out).to_string_lossy())]);
    for name in names {
        let (from, to) = (beside(job, name), beside(out, name));
        if resolved(&from) == resolved(&to) {
            continue;
        }
        if !targets.insert(folded(&resolved(&to).to_string_lossy())) {
            return Err(Failure::write(&to, "two files would go there; name another job file"));
        }
        let bytes = input::bytes(&from)?;
        if !to.exists() {
            copies.push((to, bytes));
        } else if input::bytes(&to)? != bytes {
            let from = from.display();
            let reason = format_args!("a file is there that is not the one the job names, `{from}`");
            return Err(Failure::write(&to, format_args!("{reason}; write the laid job to another folder")));
        }
    }
    Ok(copies)
}
