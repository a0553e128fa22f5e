// A job that is open: as it was, as it is, and what comes of it.
import { Engine } from "./engine.js";
import { listed, moved, pointer } from "./job.js";
import { exact } from "./lengths.js";

/** Holds an open job and keeps its takeoff in step with it. */
export class Session {
  /** The job's file name. */
  name;
  /** The takeoff of the job as it was opened. */
  before;
  /** The last takeoff that came out; the job may have gone on, and may have problems since. */
  now;
  /** What the job took as it was opened, and what the last takeoff takes: item to amount, in words. */
  broughtBefore;
  bring;
  /** What is wrong with the job as it is; empty when `now` is its takeoff. */
  problems = [];
  /** The core's words for the kinds in a takeoff. */
  words;

  #engine = new Engine();
  #text;
  #taken;
  #opened;
  #job;
  #files = {};
  #told;
  #map;
  #stale = false;
  #busy = false;

  /**
   * @param {object} told
   * @param {() => Promise<void>} told.changed there is a new takeoff, or there are new problems
   * @param {(error: Error) => void} told.failed the core gave no answer
   */
  constructor(told) {
    this.#told = told;
  }

  /**
   * Takes up another job. One that can't be taken off leaves the open one as it is.
   *
   * @param {{ name: string, text: string, given: Map<string, string> }} read
   * @returns {Promise<object[]>} what is wrong with it; empty when it is open now
   */
  async open({ name, text, given }) {
    const named = await this.filesNamed(text);
    const files = Object.fromEntries(named.flatMap((file) => {
      const found = given.get(file) ?? given.get(file.split("/").pop());
      return found === undefined ? [] : [[file, found]];
    }));
    this.words ??= JSON.parse(await this.#engine.ask("words_json"));
    const result = await this.#view(text, files, "");
    if (!result.ok) return result.problems;
    const bring = new Map(result.bring);
    this.name = name;
    this.before = this.now = result.takeoff;
    this.broughtBefore = this.bring = bring;
    this.problems = [];
    this.#text = this.#taken = text;
    this.#opened = this.#job = JSON.parse(text);
    this.#files = files;
    return [];
  }

  /** The names of the files that a job names. */
  async filesNamed(text) {
    return JSON.parse(await this.#engine.ask("files_named_json", text));
  }

  /** What the job writes of a post's place. */
  typed(slope, post) {
    const { u_mm, v_mm } = this.now.slopes[slope].posts.find(({ name }) => name === post);
    return listed(this.#job.slopes[slope], post) ?? { u: exact(u_mm), v: exact(v_mm) };
  }

  /** What is wrong with a field of a post, if it is. */
  fault(slope, post, field) {
    return this.problems.find(({ path }) => path === `${pointer(this.#job, slope, post)}/${field}`);
  }

  /** What is odd about a post. */
  findings(slope, post) {
    return this.now.findings.filter(({ path }) => path === pointer(this.#job, slope, post));
  }

  /** The text of the job file as it is now; as it was read, if nothing was moved. */
  get text() {
    return this.#job === this.#opened ? this.#text : `${JSON.stringify(this.#job, null, 2)}\n`;
  }

  /** The roof map of a slope of the last takeoff. */
  async roofMap(slope) {
    if (this.#map?.of !== this.#taken || this.#map.slope !== slope) {
      const svg = await this.#engine.ask("roof_map_svg", this.#taken, JSON.stringify(this.#files), this.now.slopes[slope].name);
      this.#map = { of: this.#taken, slope, svg };
    }
    return this.#map.svg;
  }

  /** The report of the last takeoff, as one HTML page. */
  report() {
    return this.#engine.ask("report_html", this.#taken, JSON.stringify(this.#files));
  }

  /** Puts a post elsewhere. Whatever is asked while the core is at work waits, and only the last of it is done. */
  move(slope, post, place) {
    this.#job = moved(this.#job, slope, this.now, post, place);
    return this.#catchUp();
  }

  /** Puts a post back to where the job was opened with it. */
  restore(slope, post) {
    const { u_mm, v_mm } = this.before.slopes[slope].posts.find(({ name }) => name === post);
    const { u, v } = listed(this.#opened.slopes[slope], post) ?? { u: exact(u_mm), v: exact(v_mm) };
    return this.move(slope, post, { u, v });
  }

  /** Whether the job has arrays whose posts can be placed. */
  get hasRails() {
    return this.#job.slopes.some(({ arrays }) => arrays?.some(({ rails }) => rails));
  }

  /**
   * Places the arrays that have rails, and their posts, where they cost least.
   *
   * @returns {Promise<{ ok: true, layout: object } | { ok: false, problems: object[] }>}
   */
  async layOut() {
    const answer = JSON.parse(await this.#engine.ask("layout_json", this.text, JSON.stringify(this.#files)));
    if (answer.ok) {
      this.#job = answer.job;
      await this.#catchUp();
    }
    return answer;
  }

  /** Whether the takeoff is of the job as it is, with nothing still asked. */
  get settled() {
    return !this.#stale;
  }

  stop() {
    this.#engine.stop();
  }

  async #catchUp() {
    this.#stale = true;
    if (this.#busy) return;
    this.#busy = true;
    try {
      while (this.#stale) {
        this.#stale = false;
        const text = this.text;
        const slope = this.#map?.slope ?? 0;
        const result = await this.#view(text, this.#files, this.now.slopes[slope].name);
        this.problems = result.problems ?? [];
        if (result.ok) {
          [this.now, this.#taken] = [result.takeoff, text];
          this.bring = new Map(result.bring);
          this.#map = { of: text, slope, svg: result.map };
        }
        await this.#told.changed();
      }
    } catch (error) {
      this.#told.failed(error);
    } finally {
      this.#busy = false;
    }
  }

  async #view(text, files, slope) {
    return JSON.parse(await this.#engine.ask("view_json", text, JSON.stringify(files), slope));
  }
}
