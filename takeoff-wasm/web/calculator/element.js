// <tilepost-calculator job="job.json">: a job's takeoff, its roof map and its posts to be moved.
import { element } from "./dom.js";
import { exact, length, onTape, STEPS } from "./lengths.js";
import { RoofMap } from "./map.js";
import { notes } from "./notes.js";
import { readFetched, readOpened } from "./opening.js";
import { PostPanel } from "./post.js";
import { problems } from "./problems.js";
import { Session } from "./session.js";
import { countTable, materialTable } from "./totals.js";

class Calculator extends HTMLElement {
  #session = new Session({ changed: () => this.#changed(), failed: ({ message }) => (this.#status.textContent = message) });
  #slope = 0;
  #chosen;
  /** Where a post is being moved to, until there is a takeoff of it. */
  #aim;

  #title = element("h2", {});
  #status = element("p", { role: "status" });
  #slopes = element("select", { id: "slope", onchange: () => this.#turnTo(this.#slopes.selectedIndex) });
  #how = element("p", { id: "how" });
  #problems = element("div", { class: "faults" });
  #totals = element("div", { class: "totals" });
  #notes = element("div", { class: "notes" });
  #download = element("button", {
    type: "button", disabled: true,
    onclick: () => this.#save(this.#session.name, this.#session.text, "application/json"),
  }, "Download the job");
  #report = element("button", { type: "button", disabled: true, onclick: () => this.#saveReport() }, "Download the report");
  #layout = element("button", { type: "button", hidden: true, onclick: () => this.#layOut() }, "Place the posts");
  #work = element("div", { class: "work", hidden: true });
  #map = new RoofMap({
    choose: (name) => this.#choose(name),
    place: (name, u_mm, v_mm) => this.#place(name, u_mm, v_mm),
    step: (name, right_mm, up_mm) => this.#step(name, right_mm, up_mm),
    drop: () => this.#show(),
  });
  #panel = new PostPanel({
    choose: (name) => this.#choose(name),
    type: (field, text) => this.#session.move(this.#slope, this.#chosen, { [field]: text }),
    move: (v_mm) => this.#session.move(this.#slope, this.#chosen, { v: exact(v_mm) }),
    restore: () => this.#session.restore(this.#slope, this.#chosen),
  });

  constructor() {
    super();
    const files = element("input", {
      type: "file", id: "open", multiple: true, accept: ".json,.csv",
      onchange: () => {
        this.#open(readOpened([...files.files]));
        files.value = "";
      },
    });
    this.attachShadow({ mode: "open" }).append(
      element("link", { rel: "stylesheet", href: new URL("./calculator.css", import.meta.url) }),
      element("header", {}, this.#title, element("label", { for: "open", class: "button" }, "Open a job…", files),
        this.#layout, this.#download, this.#report),
      this.#status,
      this.#problems,
      this.#work);
    this.#work.append(
      element("section", { class: "roof", "aria-label": "Roof map" },
        element("div", { class: "tools" },
          element("label", { for: "slope" }, "Slope ", this.#slopes), this.#map.zoom),
        this.#map.view, this.#how),
      element("div", { class: "side" }, this.#panel.view, this.#totals),
      this.#notes);
    this.addEventListener("dragover", (event) => event.preventDefault());
    this.addEventListener("drop", (event) => {
      event.preventDefault();
      this.#open(readOpened(event.dataTransfer.files));
    });
  }

  connectedCallback() {
    const address = new URL(this.getAttribute("job") ?? "job.json", document.baseURI);
    this.#open(readFetched(address, (job) => this.#session.filesNamed(job)));
  }

  disconnectedCallback() {
    this.#session.stop();
  }

  async #open(reading) {
    try {
      const read = await reading;
      const wrong = await this.#session.open(read);
      if (wrong.length) {
        this.#complain(`What is wrong with ${read.name}`, wrong);
        this.#status.textContent = `${read.name} is not opened: ${wrong.length} to mend`;
        return;
      }
      const { job, display, slopes } = this.#session.now;
      this.#work.hidden = this.#download.disabled = this.#report.disabled = false;
      this.#layout.hidden = !this.#session.hasRails;
      this.#title.textContent = job;
      this.#status.textContent = `${read.name} is open`;
      this.#how.textContent = `Drag a post, or choose one: the arrow keys move it by ${STEPS[display].words}.`;
      this.#slopes.replaceChildren(...slopes.map(({ name }) => element("option", {}, name)));
      await this.#turnTo(Math.max(slopes.findIndex(({ posts }) => posts.length), 0));
    } catch (error) {
      this.#status.textContent = error.message;
    }
  }

  async #turnTo(slope) {
    this.#slope = slope;
    this.#slopes.selectedIndex = slope;
    this.#chosen = this.#posts(this.#session.now)[0]?.name;
    await this.#show();
  }

  async #choose(name) {
    if (name === this.#chosen) return;
    this.#chosen = name;
    await this.#show();
  }

  #place(name, u_mm, v_mm) {
    this.#aim = { name, u_mm: this.#onTape(u_mm), v_mm: this.#onTape(v_mm) };
    this.#session.move(this.#slope, name, { u: this.#length(this.#aim.u_mm), v: this.#length(this.#aim.v_mm) });
  }

  #step(name, right_mm, up_mm) {
    const from = this.#aim?.name === name ? this.#aim : this.#find(this.#session.now, name);
    const [field, mm] = right_mm ? ["u_mm", right_mm] : ["v_mm", up_mm];
    const to = this.#onTape(from[field] + mm);
    this.#aim = { name, u_mm: from.u_mm, v_mm: from.v_mm, [field]: to };
    this.#session.move(this.#slope, name, { [field[0]]: this.#length(to) });
  }

  /** Posts of arrays with rails go where they cost least. */
  async #layOut() {
    this.#layout.disabled = true;
    this.#status.textContent = "The posts are being placed…";
    try {
      const { ok, layout, problems: wrong } = await this.#session.layOut();
      this.#status.textContent = ok ? placed(layout) : "The posts stay where they are";
      if (!ok) this.#complain("Why the posts can't be placed", wrong);
    } catch (error) {
      this.#status.textContent = error.message;
    } finally {
      this.#layout.disabled = false;
    }
  }

  async #changed() {
    if (!this.#find(this.#session.now, this.#chosen)) this.#chosen = this.#posts(this.#session.now)[0]?.name;
    await this.#show();
    const { now, problems: wrong, settled } = this.#session;
    if (!settled || !this.#chosen) return;
    const { u, v } = this.#session.typed(this.#slope, this.#chosen);
    const { situation } = this.#find(now, this.#chosen);
    this.#status.textContent = wrong.length
      ? `${this.#chosen} can't be taken off at ${u} along, ${v} up: ${wrong[0].message}`
      : `${this.#chosen} stands at ${u} along, ${v} up: ${this.#session.words.situations[situation]}`;
  }

  async #show() {
    const { now, before, bring, broughtBefore } = this.#session;
    const svg = await this.#session.roofMap(this.#slope);
    const post = this.#find(now, this.#chosen);
    const first = this.#find(before, this.#chosen);
    const was = first && (first.u_mm !== post.u_mm || first.v_mm !== post.v_mm) ? first : undefined;
    this.#map.show(svg, this.#posts(now), {
      chosen: this.#chosen, was, display: now.display,
      label: ({ name, u_mm, v_mm, situation }) =>
        `post ${name}, ${this.#length(u_mm)} along, ${this.#length(v_mm)} up: ${this.#session.words.situations[situation]}`,
    });
    this.#panel.view.hidden = !post;
    if (post) {
      this.#panel.show(post, {
        names: this.#posts(now).map(({ name }) => name),
        typed: this.#session.typed(this.#slope, this.#chosen),
        findings: this.#session.findings(this.#slope, this.#chosen),
        cuts: now.slopes[this.#slope].cuts.filter(({ posts }) => posts.includes(post.name)),
        was, display: now.display, words: this.#session.words,
      });
    }
    this.#totals.replaceChildren(countTable(now, before, this.#session.words.counts), materialTable(bring, broughtBefore));
    this.#notes.replaceChildren(...notes(now));
    this.#showProblems();
    if (this.#session.settled && !this.#session.problems.length) this.#aim = undefined;
  }

  #showProblems() {
    const { problems: wrong } = this.#session;
    this.#complain("What is wrong with the job as it is", wrong);
    if (this.#aim && wrong.length) this.#map.refuse(this.#aim.name, this.#aim);
    this.#panel.fault(Object.fromEntries(["u", "v"].map((field) =>
      [field, this.#session.fault(this.#slope, this.#chosen, field)?.message])));
  }

  #complain(title, wrong) {
    const section = wrong.length && element("section", { "aria-label": title }, element("h3", {}, title), problems(wrong));
    this.#problems.replaceChildren(...(section ? [section] : []));
  }

  #posts(takeoff) {
    return takeoff.slopes[this.#slope].posts;
  }

  #find(takeoff, name) {
    return this.#posts(takeoff).find((post) => post.name === name);
  }

  #length(mm) {
    return length(mm, this.#session.now.display);
  }

  #onTape(mm) {
    return onTape(mm, this.#session.now.display);
  }

  async #saveReport() {
    try {
      this.#save("report.html", await this.#session.report(), "text/html");
    } catch (error) {
      this.#status.textContent = error.message;
    }
  }

  #save(name, text, type) {
    const address = URL.createObjectURL(new Blob([text], { type }));
    element("a", { href: address, download: name }).click();
    setTimeout(() => URL.revokeObjectURL(address), 60_000);
  }
}

/** What a layout comes to. */
function placed({ before, after, currency }) {
  const cost = `${after.posts} posts are placed; each by itself, added up, they cost ${after.additive_cost} ${currency}`;
  return before ? `${cost}, in place of ${before.posts} for ${before.additive_cost}` : cost;
}

if (!customElements.get("tilepost-calculator")) customElements.define("tilepost-calculator", Calculator);
