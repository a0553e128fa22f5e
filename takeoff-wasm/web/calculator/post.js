// What one post meets, and its place to be typed.
import { element } from "./dom.js";
import { length, shortLength } from "./lengths.js";
import { problems } from "./problems.js";

const FIELDS = { u: "along the eave", v: "up the slope" };

/** The post that is chosen. It keeps no job: it tells what is typed, and shows what it is told. */
export class PostPanel {
  #choice = element("select", { id: "post", onchange: () => this.#told.choose(this.#choice.value) });
  #inputs = {};
  #faults = {};
  #facts = element("div");
  #told;

  /**
   * @param {object} told
   * @param {(name: string) => void} told.choose
   * @param {(field: "u" | "v", text: string) => void} told.type
   * @param {(v_mm: number) => void} told.move up or down the slope to there
   * @param {() => void} told.restore to where the job opened with it
   */
  constructor(told) {
    this.#told = told;
    const fields = Object.entries(FIELDS).map(([field, words]) => {
      const fault = element("p", { class: "fault", id: `${field}-fault` });
      const input = element("input", {
        type: "text", id: field, autocomplete: "off", spellcheck: "false", "aria-describedby": fault.id,
        onchange: () => told.type(field, input.value),
      });
      this.#inputs[field] = input;
      this.#faults[field] = fault;
      return element("div", { class: "field" }, element("label", { for: field }, words), input, fault);
    });
    this.view = element("section", { "aria-labelledby": "post-title" },
      element("h3", { id: "post-title" }, element("label", { for: "post" }, "Post "), this.#choice),
      element("div", { class: "fields" }, ...fields), this.#facts);
  }

  /**
   * @param {object} post the post in the takeoff
   * @param {object} with
   * @param {string[]} with.names every post of the slope
   * @param {{ u: string, v: string }} with.typed its place as the job has it
   * @param {object[]} with.cuts the cuts for this post
   * @param {object[]} with.findings what is odd about it
   * @param {object} [with.was] the post as the job opened with it, where that is another place
   * @param {"imperial" | "metric"} with.display
   * @param {{ situations: Record<string, string>, sides: Record<string, string> }} with.words the core's words
   */
  show(post, { names, typed, cuts, findings, was, display, words }) {
    const known = [...this.#choice.options].map((option) => option.value);
    if (known.join("\n") !== names.join("\n")) {
      this.#choice.replaceChildren(...names.map((name) => element("option", { value: name }, name)));
    }
    this.#choice.value = post.name;
    for (const field of Object.keys(FIELDS)) {
      if (this.view.getRootNode().activeElement !== this.#inputs[field] || this.#inputs[field].value === "") {
        this.#inputs[field].value = typed[field];
      }
    }
    this.fault({});
    this.#facts.replaceChildren(
      facts(post, cuts, was, display, words), ...this.#buttons(post, was, display, words), problems(findings));
  }

  /** Shows what is wrong with a field; fields left out are right. */
  fault(faults) {
    for (const [field, input] of Object.entries(this.#inputs)) {
      this.#faults[field].textContent = faults[field] ?? "";
      if (faults[field]) input.setAttribute("aria-invalid", "true");
      else input.removeAttribute("aria-invalid");
    }
  }

  #buttons({ nearest }, was, display, words) {
    const [up, direction] = nearest ? [Math.abs(nearest.up_mm), nearest.up_mm < 0 ? "down" : "up"] : [];
    return [
      nearest && element("p", {}, "Move to: ",
        element("strong", {}, `${length(up, display)} ${direction}`), `, ${words.situations[nearest.situation]}. `,
        element("button", { type: "button", id: "nearest", onclick: () => this.#told.move(nearest.v_mm) }, "Move it there")),
      was && element("p", {},
        element("button", { type: "button", id: "restore", onclick: () => this.#told.restore() }, "Put it back")),
    ].filter(Boolean);
  }
}

function facts(post, cuts, was, display, words) {
  const { margin, deck, top } = post;
  const rows = [
    ["meets", words.situations[post.situation] + (post.severed ? ", a tile severed" : ""), was && words.situations[was.situation]],
    ...cuts.map((cut) => [`tile ${cut.tile}`, cutInWords(cut, display, words.sides)]),
    ["deck flashing", deck.method, was?.deck.method],
    ["tile flashing", top.passes ? "tucks and covers" : "falls short", was && (was.top.passes ? "tucks and covers" : "falls short")],
    ["tolerance", ["left", "right", "down", "up"].map((way) => `${length(margin[`${way}_mm`], display)} ${way}`).join(", ")],
  ];
  return element("dl", {}, ...rows.flatMap(([what, now, before]) => [
    element("dt", {}, what),
    element("dd", {}, now, before && before !== now && element("span", { class: "before" }, `; was ${before}`)),
  ]));
}

function cutInWords(cut, display, sides) {
  const size = `${shortLength(2 * cut.half_width_mm, display)} × ${shortLength(2 * cut.half_height_mm, display)}`;
  const place = `${shortLength(cut.from_left_mm, display)} from the left, ${shortLength(cut.from_nose_mm, display)} from the nose`;
  const open = cut.open_to.length ? `, open to ${cut.open_to.map((side) => sides[side]).join(" and ")}` : "";
  return `${cut.kind}${open}: ${size}, its centre ${place}`;
}
