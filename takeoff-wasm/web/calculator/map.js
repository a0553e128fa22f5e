// The roof map with a handle on each post.
import { STEPS } from "./lengths.js";
import { element } from "./dom.js";

/** A drag shorter than this is a click, in pixels. */
const LEAST_DRAG = 3;
const ARROWS = { ArrowLeft: [-1, 0], ArrowRight: [1, 0], ArrowDown: [0, -1], ArrowUp: [0, 1] };
const ZOOMS = [1, 1.5, 2, 3, 4, 6, 8];

/**
 * The sheet of one slope. It keeps no job: it tells what is done to a post, and shows what it is told.
 */
export class RoofMap {
  #sheet = element("div", { class: "sheet" });
  #drawing = element("div", { class: "drawing" });
  #was = element("span", { class: "was", hidden: true });
  #svg = "";
  #zoom = 0;
  #box = [0, 0, 1, 1];
  #handles = new Map();
  #display = "imperial";

  #told;

  /**
   * @param {object} told
   * @param {(name: string) => void} told.choose
   * @param {(name: string, u_mm: number, v_mm: number) => void} told.place where a post is dragged to
   * @param {(name: string, right_mm: number, up_mm: number) => void} told.step by the arrow keys
   * @param {() => void} told.drop a drag has ended
   */
  constructor(told) {
    this.#told = told;
    this.#sheet.append(this.#drawing, this.#was);
    this.view = element("div", { class: "scroll" }, this.#sheet);
    this.zoom = element("div", { class: "zoom", role: "group", "aria-label": "size of the map" },
      element("button", { type: "button", onclick: () => this.#resize(-1), "aria-label": "smaller" }, "−"),
      element("button", { type: "button", onclick: () => this.#resize(1), "aria-label": "larger" }, "+"));
  }

  /**
   * @param {string} svg the core's drawing of the slope: in millimetres, `x = u`, `y = −v`
   * @param {{ name: string, u_mm: number, v_mm: number }[]} posts
   * @param {{ chosen?: string, was?: { u_mm: number, v_mm: number }, display: string, label: (post: object) => string }} with
   */
  show(svg, posts, { chosen, was, display, label }) {
    this.#display = display;
    if (svg !== this.#svg) this.#draw(svg);
    this.#keep(posts);
    for (const post of posts) {
      const handle = this.#handles.get(post.name);
      handle.place = post;
      handle.button.setAttribute("aria-label", label(post));
      handle.button.setAttribute("aria-pressed", String(post.name === chosen));
      handle.button.tabIndex = post.name === chosen ? 0 : -1;
      handle.button.classList.remove("refused");
      if (!handle.held) this.#put(handle.button, post);
    }
    this.#was.hidden = !was;
    if (was) this.#put(this.#was, was);
  }

  /** Marks a post whose place is refused. */
  refuse(name, place) {
    const handle = this.#handles.get(name);
    handle?.button.classList.add("refused");
    if (handle && !handle.held) this.#put(handle.button, place);
  }

  #draw(svg) {
    const drawing = new DOMParser().parseFromString(svg, "image/svg+xml").documentElement;
    this.#svg = svg;
    this.#box = drawing.getAttribute("viewBox").split(" ").map(Number);
    drawing.removeAttribute("width");
    drawing.removeAttribute("height");
    this.#drawing.replaceChildren(drawing);
  }

  #keep(posts) {
    const names = new Set(posts.map((post) => post.name));
    for (const [name, { button }] of this.#handles) {
      if (names.has(name)) continue;
      button.remove();
      this.#handles.delete(name);
    }
    for (const { name } of posts) {
      if (!this.#handles.has(name)) this.#handles.set(name, this.#handle(name));
    }
  }

  #handle(name) {
    const button = element("button", { type: "button", class: "handle", "aria-describedby": "how" });
    const handle = { button, place: undefined, held: undefined };
    button.addEventListener("pointerdown", (event) => {
      if (event.button !== 0) return;
      button.setPointerCapture(event.pointerId);
      handle.held = { x: event.clientX, y: event.clientY, from: handle.place, moved: false };
      this.#told.choose(name);
    });
    button.addEventListener("pointermove", (event) => {
      const { held } = handle;
      if (!held) return;
      const [dx, dy] = [event.clientX - held.x, event.clientY - held.y];
      held.moved ||= Math.hypot(dx, dy) >= LEAST_DRAG;
      if (!held.moved) return;
      const mm = this.#box[2] / this.#sheet.clientWidth;
      const place = { u_mm: held.from.u_mm + dx * mm, v_mm: held.from.v_mm - dy * mm };
      this.#put(button, place);
      this.#told.place(name, place.u_mm, place.v_mm);
    });
    for (const end of ["pointerup", "pointercancel"]) {
      button.addEventListener(end, () => {
        const moved = handle.held?.moved;
        handle.held = undefined;
        if (moved) this.#told.drop();
      });
    }
    button.addEventListener("click", () => this.#told.choose(name));
    button.addEventListener("keydown", (event) => {
      const [right, up] = ARROWS[event.key] ?? [];
      if (right === undefined || event.altKey || event.ctrlKey || event.metaKey) return;
      event.preventDefault();
      const step = STEPS[this.#display][event.shiftKey ? "shift" : "alone"];
      this.#told.step(name, right * step, up * step);
    });
    this.#sheet.append(button);
    return handle;
  }

  #put(mark, { u_mm, v_mm }) {
    const [left, top, width, height] = this.#box;
    mark.style.left = `${(100 * (u_mm - left)) / width}%`;
    mark.style.top = `${(100 * (-v_mm - top)) / height}%`;
  }

  #resize(by) {
    this.#zoom = Math.min(Math.max(this.#zoom + by, 0), ZOOMS.length - 1);
    this.#sheet.style.width = `${100 * ZOOMS[this.#zoom]}%`;
    [...this.#handles.values()].find(({ button }) => button.tabIndex === 0)?.button.scrollIntoView({ block: "center", inline: "center" });
  }
}
