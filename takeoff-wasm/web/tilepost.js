// The takeoff in JavaScript: a job in, a takeoff or its problems out.
import load, * as core from "./pkg/tilepost.js";

/**
 * Loads the module; everything else needs it.
 *
 * @param {BufferSource | URL | string} [module] the module's bytes or place, where it is not beside this file
 */
export default async function init(module) {
  await load(module === undefined ? undefined : { module_or_path: module });
}

/**
 * @param {object | string} job a job file's document, or its text
 * @param {Record<string, string>} [files] texts of the files that the job names
 * @returns {{ ok: true, takeoff: object } | { ok: false, problems: Problem[] }}
 */
export function takeoff(job, files = {}) {
  return JSON.parse(core.takeoff_json(text(job), JSON.stringify(files)));
}

/**
 * Where the posts of a job's arrays go so that they cost least; `job` is the document of the job as laid out.
 *
 * @param {object | string} job a job file's document, or its text
 * @param {Record<string, string>} [files] texts of the files that the job names
 * @returns {{ ok: true, layout: object, job: object } | { ok: false, problems: Problem[] }}
 */
export function layout(job, files = {}) {
  return JSON.parse(core.layout_json(text(job), JSON.stringify(files)));
}

/**
 * One order for several jobs: needs added up before they are rounded to packs, spares pooled by tile.
 *
 * @param {(object | string | { job: object | string, files: Record<string, string> })[]} jobs job files, each alone or
 *   with the texts of the files that it names
 * @returns {{ ok: true, order: object } | { ok: false, problems: Problem[] }}
 */
export function order(jobs) {
  const pairs = jobs.map((each) => (each.job === undefined ? [text(each), {}] : [text(each.job), each.files ?? {}]));
  return JSON.parse(core.order_json(JSON.stringify(pairs)));
}

/**
 * What changed between a job as bid and the same job as built.
 *
 * @param {object | string} bid a job file's document, or its text
 * @param {object | string} asBuilt
 * @param {{ bid?: Record<string, string>, asBuilt?: Record<string, string> }} [files] texts of the files that each names
 * @returns {{ ok: true, comparison: object } | { ok: false, problems: Problem[] }}
 */
export function compare(bid, asBuilt, files = {}) {
  return JSON.parse(core.compare_json(
    text(bid), JSON.stringify(files.bid ?? {}), text(asBuilt), JSON.stringify(files.asBuilt ?? {})));
}

/** Every problem of a job: errors, and findings where it can be taken off. */
export function check(job, files = {}) {
  return JSON.parse(core.check_json(text(job), JSON.stringify(files)));
}

/** The report of a job as one HTML page that needs nothing else; `undefined` where the job has problems. */
export function report(job, files = {}) {
  return core.report_html(text(job), JSON.stringify(files));
}

/** The JSON Schema of the job file. */
export function schema() {
  return JSON.parse(core.schema_json());
}

function text(job) {
  return typeof job === "string" ? job : JSON.stringify(job);
}
