// What is wrong and what is odd.
import { element } from "./dom.js";

/**
 * Errors or findings, each with what mends it and its place in the job.
 *
 * @param {string} title
 * @param {{ message: string, help: string, path: string, severity: string }[]} problems
 */
export function problemList(title, problems) {
  return element("section", { "aria-label": title },
    element("h3", {}, title),
    element("ul", { class: "problems" }, ...problems.map(({ message, help, path, severity }) =>
      element("li", { class: severity },
        element("p", {}, ...quoted(message)), element("p", { class: "help" }, ...quoted(help)),
        element("p", {}, element("code", { class: "path" }, path || "/"))))));
}

// What the user wrote stands in backticks.
function quoted(text) {
  return text.split("`").map((part, index) => (index % 2 ? element("code", {}, part) : part));
}
