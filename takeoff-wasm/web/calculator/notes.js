// What goes with the numbers: findings, cautions, assumptions, what nobody asked.
import { element } from "./dom.js";
import { problems } from "./problems.js";

/** @param {object} takeoff */
export function notes({ findings, cautions, assumptions, survey }) {
  const unasked = survey.filter(({ answer }) => answer === null).map(({ asks }) => asks);
  return [
    findings.length > 0 && folded(`Findings: ${findings.length}`, problems(findings)),
    list("Cautions", cautions),
    unasked.length > 0 && list("The survey left unasked", unasked),
    folded(`Assumptions in force: ${assumptions.length}`, bullets(assumptions.map(({ what, value, set_by_job }) =>
      `${what}: ${value}${set_by_job ? ", set by the job" : ""}`))),
  ].filter(Boolean);
}

function list(title, lines) {
  return element("section", {}, element("h3", {}, title), bullets(lines));
}

function folded(title, content) {
  return element("details", {}, element("summary", {}, title), content);
}

function bullets(lines) {
  return element("ul", {}, ...lines.map((line) => element("li", {}, line)));
}
