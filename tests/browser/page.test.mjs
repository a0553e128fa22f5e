// The page in a browser, under the policy of a careful host.
import assert from "node:assert/strict";
import { mkdirSync, readFileSync } from "node:fs";
import { join } from "node:path";
import { after, before, test } from "node:test";
import axe from "axe-core";
import { chromium } from "playwright-core";
import { core, root, web } from "./core.mjs";
import { serve } from "./serve.mjs";

const shipped = readFileSync(join(web, "job.json"), "utf8");
const prices = readFileSync(join(web, "prices.csv"), "utf8");
const beside = JSON.stringify({ "prices.csv": prices });
const pictures = join(root, "target/pages");
let site, browser;

before(async () => {
  mkdirSync(pictures, { recursive: true });
  site = await serve();
  browser = await chromium.launch({ executablePath: process.env.CHROMIUM ?? "/usr/bin/chromium", args: ["--no-sandbox"] });
});

after(async () => {
  await browser?.close();
  site?.close();
});

/** Opens the page; whatever it complains of fails the test at its end. */
async function opened(t, options = {}) {
  const context = await browser.newContext({ viewport: { width: 1400, height: 1000 }, ...options });
  context.setDefaultTimeout(15_000);
  const page = await context.newPage();
  const complaints = [];
  page.on("console", (message) => message.type() === "error" && complaints.push(message.text()));
  page.on("pageerror", (error) => complaints.push(String(error)));
  await page.goto(site.address);
  await page.getByText("job.json is open").waitFor();
  t.after(async () => {
    await context.close();
    assert.deepEqual(complaints, []);
  });
  return page;
}

/** The takeoff of a job file's text. */
function takeoff(text, files = beside) {
  const result = JSON.parse(core.takeoff_json(text, files));
  assert.ok(result.ok, JSON.stringify(result.problems));
  return result.takeoff;
}

/** What the page offers to download: the job, or else the report. */
async function downloaded(page, name = "Download the job") {
  const [download] = await Promise.all([page.waitForEvent("download"), page.getByRole("button", { name }).click()]);
  return readFileSync(await download.path(), "utf8");
}

/** The counts that the page shows: words to what is opened and now. */
async function counts(page) {
  const rows = await page.locator("table", { hasText: "Counts" }).locator("tbody tr").all();
  const cells = await Promise.all(rows.map((row) => row.locator("th, td").allTextContents()));
  return new Map(cells.map(([words, opened, now]) => [words, { opened, now }]));
}

const handle = (page, name) => page.getByRole("button", { name: new RegExp(`^post ${name},`) });
const field = (page, name) => page.getByLabel(name, { exact: true });

test("the scenario that is shipped is the plain gable", () => {
  assert.equal(shipped, readFileSync(join(root, "fixtures/plain-gable/job.json"), "utf8"),
    "copy it: cp fixtures/plain-gable/job.json takeoff-wasm/web/job.json");
});

test("each post is drawn on the map under its handle", async (t) => {
  const page = await opened(t);
  const apart = await page.evaluate(() => {
    const root = document.querySelector("tilepost-calculator").shadowRoot;
    const centre = (box) => [box.x + box.width / 2, box.y + box.height / 2];
    return [...root.querySelectorAll("button.handle")].map((handle) => {
      const name = /^post ([^,]+),/.exec(handle.getAttribute("aria-label"))[1];
      const drawn = root.querySelector(`[data-post="${CSS.escape(name)}"] ellipse`);
      const [[x, y], [u, v]] = [handle, drawn].map((mark) => centre(mark.getBoundingClientRect()));
      return Math.hypot(x - u, y - v);
    });
  });
  assert.ok(apart.length > 10 && Math.max(...apart) < 3, `pixels apart: ${apart}`);
});

test("the browser gives the same bytes as Node", async (t) => {
  const page = await opened(t);
  const text = await page.evaluate(async ([job, files]) => {
    const module = await import("./pkg/tilepost.js");
    await module.default();
    return module.takeoff_json(job, files);
  }, [shipped, beside]);
  assert.equal(text, core.takeoff_json(shipped, beside));
});

test("the page opens with its scenario", async (t) => {
  const page = await opened(t);
  const { job, counts: expected, slopes } = takeoff(shipped);
  await page.getByRole("heading", { name: job }).waitFor();
  for (const { name } of slopes[0].posts) assert.equal(await handle(page, name).count(), 1);
  const shown = await counts(page);
  assert.equal(shown.get("tiles with a hole").now, String(expected.holes));
  assert.equal(shown.get("tiles with a notch").now, String(expected.notches));
  assert.equal(await page.locator("[data-post]").count(), slopes[0].posts.length);
});

test("a post is dragged, and the job that comes out is what the page shows", async (t) => {
  const page = await opened(t);
  const box = await handle(page, "A2").boundingBox();
  const from = [box.x + box.width / 2, box.y + box.height / 2];
  await page.mouse.move(...from);
  await page.mouse.down();
  for (let step = 1; step <= 8; step++) await page.mouse.move(from[0] + 3 * step, from[1] - 2 * step);
  await page.mouse.up();
  await page.getByText("A2 stands at").waitFor();

  const job = JSON.parse(await downloaded(page));
  const first = JSON.parse(shipped);
  const [post] = job.slopes[0].posts.splice(1, 1);
  const [was] = first.slopes[0].posts.splice(1, 1);
  assert.deepEqual(job, first, "nothing but the post has changed");
  assert.equal(post.name, "A2");
  assert.notEqual(post.u, was.u);
  assert.notEqual(post.v, was.v);

  job.slopes[0].posts.splice(1, 0, post);
  const expected = takeoff(JSON.stringify(job));
  const shown = await counts(page);
  assert.equal(shown.get("tiles removed and reset").now, String(expected.counts.removed));
  assert.equal(shown.get("tiles removed and reset").opened, String(takeoff(shipped).counts.removed));
  assert.equal(await field(page, "along the eave").inputValue(), post.u);

  await page.getByRole("button", { name: "Put it back" }).click();
  await page.getByText(`A2 stands at ${was.u}`).waitFor();
  assert.deepEqual(JSON.parse(await downloaded(page)), JSON.parse(shipped));
});

test("the report that is downloaded is of the job as it is", async (t) => {
  const page = await opened(t);
  await handle(page, "A1").focus();
  await page.keyboard.press("ArrowUp");
  await page.getByText("A1 stands at").waitFor();
  const job = await downloaded(page);
  assert.notEqual(core.report_html(job, beside), core.report_html(shipped, beside));
  assert.equal(await downloaded(page, "Download the report"), core.report_html(job, beside));
});

test("a post is moved by keys", async (t) => {
  const page = await opened(t);
  await handle(page, "A1").focus();
  for (const key of ["ArrowRight", "ArrowUp", "Shift+ArrowUp"]) await page.keyboard.press(key);
  await page.getByText("A1 stands at 4 ft 8 1/4 in along, 3 ft 2 1/4 in up").waitFor();
  assert.equal(await field(page, "along the eave").inputValue(), "4 ft 8 1/4 in");
  assert.equal(await field(page, "up the slope").inputValue(), "3 ft 2 1/4 in");
  assert.equal(await page.evaluate(() => document.activeElement.shadowRoot.activeElement.className), "handle");
});

test("a place that can't be is told at its field, with its path, and mended", async (t) => {
  const page = await opened(t);
  await field(page, "up the slope").fill("3 ft 1");
  await field(page, "up the slope").press("Enter");
  const problems = page.getByRole("region", { name: "What is wrong with the job as it is" });
  await problems.getByText("/slopes/0/posts/0/v").waitFor();
  assert.equal(await field(page, "up the slope").getAttribute("aria-invalid"), "true");
  await field(page, "up the slope").fill("3 ft 2 in");
  await field(page, "up the slope").press("Enter");
  await problems.waitFor({ state: "detached" });
  assert.equal(await field(page, "up the slope").getAttribute("aria-invalid"), null);
});

test("a job with problems is refused, each problem with its path", async (t) => {
  const page = await opened(t);
  const text = shipped.replace('"display"', '"dispaly"').replace('"cover": "12 in"', '"cover": "12"');
  const { problems } = JSON.parse(core.takeoff_json(text, "{}"));
  await page.getByLabel("Open a job").setInputFiles({ name: "wrong.json", mimeType: "application/json", buffer: Buffer.from(text) });
  const listed = page.getByRole("region", { name: "What is wrong with wrong.json" });
  await listed.waitFor();
  assert.deepEqual(await listed.locator(".path").allTextContents(), problems.map(({ path }) => path || "/"));
  assert.deepEqual(JSON.parse(await downloaded(page)), JSON.parse(shipped), "the open job stays");
});

test("a page whose own job has problems says so and offers nothing else", async (t) => {
  const context = await browser.newContext();
  t.after(() => context.close());
  const page = await context.newPage();
  await page.route("**/job.json", (route) => route.fulfill({ json: { format: "tilepost-job/1", naem: "x" } }));
  await page.goto(site.address);
  await page.getByRole("region", { name: "What is wrong with job.json" }).getByText("/naem").waitFor();
  assert.equal(await page.getByRole("button", { name: "Download the job" }).isDisabled(), true);
  assert.equal(await page.getByRole("button", { name: "Download the report" }).isDisabled(), true);
  assert.equal(await page.getByRole("region", { name: "Roof map" }).isVisible(), false);
  await page.getByLabel("Open a job").setInputFiles(join(root, "fixtures/pan-cover-plumb/job.json"));
  await page.getByRole("region", { name: "Roof map" }).waitFor();
});

test("a file that is no text is refused", async (t) => {
  const page = await opened(t);
  await page.getByLabel("Open a job").setInputFiles({ name: "odd.json", mimeType: "application/json", buffer: Buffer.from([0xff, 0xfe, 0x00]) });
  await page.getByText("`odd.json` is not UTF-8 text").waitFor();
});

test("posts of a table are written out when one is moved", async (t) => {
  const page = await opened(t);
  const job = JSON.parse(shipped);
  const rows = job.slopes[0].posts.map(({ name, assembly, u, v }) => [name, assembly, u, v].join(","));
  job.slopes[0].posts = { csv: "posts.csv" };
  await page.getByLabel("Open a job").setInputFiles([
    { name: "table.json", mimeType: "application/json", buffer: Buffer.from(JSON.stringify(job)) },
    { name: "posts.csv", mimeType: "text/csv", buffer: Buffer.from(["name,assembly,u,v", ...rows].join("\n")) },
    { name: "prices.csv", mimeType: "text/csv", buffer: Buffer.from(prices) },
  ]);
  await page.getByText("table.json is open").waitFor();
  await handle(page, "B3").click();
  await page.keyboard.press("ArrowDown");
  await page.getByText("B3 stands at").waitFor();
  const moved = takeoff(await downloaded(page)).slopes[0].posts;
  const first = takeoff(shipped).slopes[0].posts;
  assert.deepEqual(moved.map(({ name }) => name), first.map(({ name }) => name));
  const apart = moved.map(({ u_mm, v_mm }, index) => [u_mm - first[index].u_mm, v_mm - first[index].v_mm]);
  apart.forEach(([right, up], index) => {
    assert.equal(right, 0);
    assert.ok(Math.abs(up - (first[index].name === "B3" ? -6.35 : 0)) < 1e-9);
  });
});

test("posts of arrays with rails are placed where they cost least", async (t) => {
  const page = await opened(t);
  const place = page.getByRole("button", { name: "Place the posts" });
  assert.equal(await place.isVisible(), false, "the shipped job has no rails");
  const folder = join(root, "fixtures/least-cost-arrays");
  const files = ["job.json", "prices.csv", "rafters.csv"].map((name) => join(folder, name));
  await page.getByLabel("Open a job").setInputFiles(files);
  await page.getByRole("heading", { name: "Millrace Close 8" }).waitFor();
  const expected = (name) => JSON.parse(readFileSync(join(folder, `expected.${name}.json`), "utf8"));
  const { after } = expected("layout");
  await place.click();
  await page.getByText(`${after.posts} posts are placed`).waitFor({ timeout: 60_000 });
  assert.deepEqual(JSON.parse(await downloaded(page)), expected("laid"));
  const shown = await counts(page);
  assert.equal(shown.get("tiles with a hole").now, String(after.holes));
  assert.equal(shown.get("tiles with a hole").opened, String(expected("takeoff").counts.holes));
  await handle(page, "large-1-1").click();
  await page.keyboard.press("ArrowUp");
  await page.getByText("large-1-1 stands at").waitFor();
});

test("why posts can't be placed is told", async (t) => {
  const page = await opened(t);
  const folder = join(root, "fixtures/least-cost-arrays");
  const job = JSON.parse(readFileSync(join(folder, "job.json"), "utf8"));
  delete job.prices;
  delete job.bid;
  await page.getByLabel("Open a job").setInputFiles([
    { name: "bare.json", mimeType: "application/json", buffer: Buffer.from(JSON.stringify(job)) },
    { name: "rafters.csv", mimeType: "text/csv", buffer: readFileSync(join(folder, "rafters.csv")) },
  ]);
  await page.getByText("bare.json is open").waitFor();
  await page.getByRole("button", { name: "Place the posts" }).click();
  await page.getByRole("region", { name: "Why the posts can't be placed" }).getByText("neither prices nor labour").waitFor();
  await page.getByText("The posts stay where they are").waitFor();
});

for (const width of [360, 800, 1400]) {
  for (const colorScheme of ["light", "dark"]) {
    test(`the page at ${width} px, ${colorScheme}, suits everybody`, async (t) => {
      // The picture and the audit add styles of their own, which the policy would forbid.
      const page = await opened(t, { viewport: { width, height: 900 }, colorScheme, bypassCSP: true });
      await handle(page, "A1").focus();
      await page.keyboard.press("ArrowUp");
      await page.getByText("A1 stands at").waitFor();
      await page.screenshot({ path: join(pictures, `${width}-${colorScheme}.png`), fullPage: true });
      assert.ok(await page.evaluate(() => document.documentElement.scrollWidth <= innerWidth), "the page is wider than the screen");
      await page.evaluate(axe.source);
      const { violations, passes } = await page.evaluate(() => globalThis.axe.run());
      assert.deepEqual(violations.map(({ id, nodes }) => [id, nodes.map(({ html }) => html)]), []);
      assert.ok(passes.length > 10, "axe looked at something");
    });
  }
}
