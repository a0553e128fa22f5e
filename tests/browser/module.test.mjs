// The web module in Node.
import assert from "node:assert/strict";
import { readFileSync } from "node:fs";
import { join } from "node:path";
import { test } from "node:test";
import fc from "fast-check";
import { core, jobs, read, root, web } from "./core.mjs";
import { rows } from "./csv.mjs";
import { length, shortLength } from "../../takeoff-wasm/web/calculator/lengths.js";
import init, { check, compare, layout, order, schema, takeoff } from "../../takeoff-wasm/web/tilepost.js";

await init(readFileSync(join(web, "pkg/tilepost_bg.wasm")));

for (const path of jobs) {
  test(`${path} is taken off`, () => {
    const { text, files } = read(path);
    const { ok, takeoff: result } = takeoff(text, JSON.parse(files));
    assert.ok(ok);
    const posts = result.slopes.flatMap((slope) => slope.posts);
    assert.ok(posts.length > 0);
    assert.equal(result.counts.posts, posts.length);
  });
}

test("a document and its text are one job", () => {
  const { text, files } = read(jobs[0]);
  assert.deepEqual(takeoff(JSON.parse(text), JSON.parse(files)), takeoff(text, JSON.parse(files)));
});

test("a layout is that of the fixture, and its job is taken off", () => {
  const folder = join(root, "fixtures/least-cost-arrays");
  const { text, files } = read(join(folder, "job.json"));
  const { ok, layout: laid, job } = layout(text, JSON.parse(files));
  assert.ok(ok);
  assert.deepEqual(laid, JSON.parse(readFileSync(join(folder, "expected.layout.json"), "utf8")));
  assert.deepEqual(job, JSON.parse(readFileSync(join(folder, "expected.laid.json"), "utf8")));
  assert.equal(takeoff(job, JSON.parse(files)).takeoff.counts.posts, laid.after.posts);
  const none = layout({ ...JSON.parse(text), prices: undefined, bid: undefined }, JSON.parse(files));
  assert.deepEqual(none.problems.map(({ code }) => code), ["no-costs"]);
});

test("one order for two jobs adds their needs up", () => {
  const [job] = schema().examples;
  const other = { ...job, name: "another" };
  const need = (lines) => Object.fromEntries(lines.filter(({ packs_of }) => !packs_of).map(({ item, need }) => [item, need]));
  const { ok, order: both } = order([job, { job: JSON.stringify(other), files: {} }]);
  assert.ok(ok);
  assert.deepEqual(both.jobs, [job.name, "another"]);
  const [alone, together] = [need(takeoff(job).takeoff.materials), need(both.materials)];
  assert.equal(together["lag 5/16 x 3 1/2 in"], 2 * alone["lag 5/16 x 3 1/2 in"]);
});

test("a job compared with itself shows no change, and with a post moved one post", () => {
  const { text, files } = read(join(root, "fixtures/plain-gable/job.json"));
  const bid = JSON.parse(text);
  const built = structuredClone(bid);
  built.slopes[0].posts[0].v = "7 ft 1 in";
  const beside = { bid: JSON.parse(files), asBuilt: JSON.parse(files) };
  assert.equal(compare(bid, text, beside).comparison.changed, false);
  const { comparison } = compare(bid, built, beside);
  assert.deepEqual(comparison.posts.map(({ post }) => post), [bid.slopes[0].posts[0].name]);
});

test("a view is the takeoff, the list in words and the map, and its words know every kind", () => {
  const words = JSON.parse(core.words_json());
  for (const path of jobs) {
    const { text, files } = read(path);
    const { takeoff: result } = takeoff(text, JSON.parse(files));
    const slope = result.slopes.at(-1).name;
    const view = JSON.parse(core.view_json(text, files, slope));
    assert.deepEqual(view.takeoff, result);
    assert.deepEqual(view.bring, rows(core.materials_csv(text, files)).map(({ item, bring_shown }) => [item, bring_shown]));
    assert.equal(view.map, core.roof_map_svg(text, files, slope));
    const posts = result.slopes.flatMap(({ posts }) => posts);
    const sides = result.slopes.flatMap(({ cuts }) => cuts).flatMap(({ open_to }) => open_to);
    assert.deepEqual(posts.filter(({ situation }) => !words.situations[situation]), []);
    assert.deepEqual(sides.filter((side) => !words.sides[side]), []);
    assert.deepEqual(Object.keys(words.counts).sort(), Object.keys(result.counts).filter((key) => !key.endsWith("_mm")).sort());
  }
});

test("problems are data", () => {
  const { ok, problems } = takeoff({ format: "tilepost-job/1", naem: "x" });
  assert.equal(ok, false);
  const unknown = problems.find(({ code }) => code === "unknown-field");
  assert.deepEqual(unknown, { ...unknown, path: "/naem", severity: "error", help: "did you mean `name`?" });
  assert.deepEqual(check({ format: "tilepost-job/1", naem: "x" }).problems, problems);
});

test("the schema knows the format", () => {
  assert.equal(schema().properties.format.const, "tilepost-job/1");
});

test("any value in any place gives a takeoff or problems, and the module lives on", () => {
  const documents = jobs.map((path) => ({ ...read(path) })).map(({ text, files }) => ({ text, files: JSON.parse(files) }));
  let refused = 0;
  fc.assert(fc.property(fc.constantFrom(...documents), fc.nat(), fc.jsonValue(), ({ text, files }, place, value) => {
    const job = JSON.parse(text);
    const [inside, key] = places(job)[place % places(job).length];
    inside[key] = value;
    const result = takeoff(job, files);
    if (!result.ok) refused += 1;
    assert.ok(result.ok || result.problems.every(({ code, message, help }) => code && message && help));
  }), { numRuns: 300 });
  assert.ok(refused > 0);
});

test("the page reads tables and writes lengths as the core does", () => {
  const table = (name) => rows(readFileSync(join(root, "fixtures/commercial-400", name), "utf8"));
  const posts = table("expected.posts.csv");
  assert.equal(posts.length, 400);
  for (const { u_mm, u, v_mm, v } of posts) {
    assert.deepEqual([length(Number(u_mm), "imperial"), length(Number(v_mm), "imperial")], [u, v]);
  }
  for (const { from_left_mm, from_left, from_nose_mm, from_nose } of table("expected.cuts.csv")) {
    const written = [from_left_mm, from_nose_mm].map((mm) => shortLength(Number(mm), "imperial"));
    assert.deepEqual(written, [from_left, from_nose]);
  }
});

test("files that are no texts by name are an error", () => {
  assert.throws(() => takeoff("{}", { "posts.csv": 7 }), /`files` is not an object of names and texts/);
});

/** Each place inside a document: what holds it, and its key there. */
function places(value) {
  if (value === null || typeof value !== "object") return [];
  return Object.keys(value).flatMap((key) => [[value, key], ...places(value[key])]);
}
