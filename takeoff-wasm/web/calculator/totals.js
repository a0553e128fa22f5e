// Totals, before and after.
import { element } from "./dom.js";

/**
 * The counts of a takeoff, beside those that the job opened with where they differ.
 *
 * @param {object} now
 * @param {object} before
 * @param {Record<string, string>} words the words for each count
 */
export function countTable(now, before, words) {
  return table("Counts", ["", "as opened", "now", "change"], Object.entries(words).map(([key, what]) => {
    const [after, first] = [now.counts[key], before.counts[key]];
    return [what, String(first), String(after), change(after - first)];
  }));
}

/**
 * What to bring, beside what the job took as it was opened.
 *
 * @param {Map<string, string>} now how much of each item, in words
 * @param {Map<string, string>} before
 */
export function materialTable(now, before) {
  const items = [...new Set([...now.keys(), ...before.keys()])];
  return table("What to bring", ["", "as opened", "now"], items.map((item) =>
    [item, before.get(item) ?? "none", now.get(item) ?? "none"]));
}

function change(by) {
  return by === 0 ? "" : by > 0 ? `+${by}` : `−${-by}`;
}

function table(title, heads, rows) {
  return element("section", {},
    element("table", {},
      element("caption", {}, title),
      element("thead", {}, element("tr", {}, ...heads.map((head) => (head ? element("th", { scope: "col" }, head) : element("td"))))),
      element("tbody", {}, ...rows.map(([what, first, after, by]) =>
        element("tr", { class: first !== after && "changed" },
          element("th", { scope: "row" }, what), element("td", { class: "first" }, first), element("td", {}, after),
          by !== undefined && element("td", { class: "change" }, by))))));
}
