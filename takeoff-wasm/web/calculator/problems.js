// What is wrong and what is odd.
import { element } from "./dom.js";

/**
 * Errors or findings, each with what mends it and its place in the job.
 *
 * @param {{ message: string, help: string, path: string, severity: string }[]} list
 */
export function problems(list) {
  return element("ul", { class: "problems" }, ...list.map(({ message, help, path, severity }) =>
    element("li", { class: severity },
      element("p", {}, ...quoted(message)), element("p", { class: "help" }, ...quoted(help)),
      element("p", {}, element("code", { class: "path" }, path || "/")))));
}

// What the user wrote stands in backticks.
function quoted(text) {
  return text.split("`").map((part, index) => (index % 2 ? element("code", {}, part) : part));
}
