// The report in a browser: on screens of three widths, in light and dark, and on two sizes of paper.
import assert from "node:assert/strict";
import { mkdirSync, writeFileSync } from "node:fs";
import { basename, dirname, join } from "node:path";
import { after, before, test } from "node:test";
import { pathToFileURL } from "node:url";
import axe from "axe-core";
import { chromium } from "playwright-core";
import { core, jobs, read, root } from "./core.mjs";

const pictures = join(root, "target/pages");
const names = jobs.map((path) => basename(dirname(path)));
const place = (name) => join(pictures, `report-${name}.html`);
let browser;

before(async () => {
  mkdirSync(pictures, { recursive: true });
  jobs.forEach((path, i) => {
    const { text, files } = read(path);
    writeFileSync(place(names[i]), core.report_html(text, files));
  });
  browser = await chromium.launch({ executablePath: process.env.CHROMIUM ?? "/usr/bin/chromium", args: ["--no-sandbox"] });
});

after(() => browser?.close());

/** Opens the report of a fixture; whatever it fetches or complains of fails the test at its end. */
async function opened(t, name, options = {}) {
  const context = await browser.newContext(options);
  const page = await context.newPage();
  const address = pathToFileURL(place(name)).href;
  const complaints = [];
  page.on("request", (request) => request.url() !== address && complaints.push(request.url()));
  page.on("console", (message) => message.type() === "error" && complaints.push(message.text()));
  page.on("pageerror", (error) => complaints.push(String(error)));
  await page.goto(address);
  t.after(async () => {
    await context.close();
    assert.deepEqual(complaints, []);
  });
  return page;
}

/** What stands out over the page's right edge, apart from what is moved sideways in a frame of its own. */
const over = (page, width) => page.evaluate((width) => {
  const moved = (element) => ["auto", "scroll"].includes(getComputedStyle(element).overflowX);
  const framed = (element) => element && (moved(element) || framed(element.parentElement));
  return [...document.body.querySelectorAll("*")]
    .filter((element) => element.getBoundingClientRect().right > width + 1 && !framed(element.parentElement))
    .map((element) => element.outerHTML.slice(0, 120));
}, width);

test("it is shown where no script may run", async (t) => {
  const page = await opened(t, "plain-gable", { javaScriptEnabled: false });
  await page.getByText("Why 32?").click();
  await page.getByText("12 × 2 = 24").waitFor();
});

/** Opens or folds whatever can be. */
const unfold = (page, open) => page.evaluate((open) => {
  for (const details of document.querySelectorAll("details")) details.open = open;
}, open);

for (const name of names) {
  test(`the report of ${name} is nowhere wider than the screen`, async (t) => {
    const page = await opened(t, name);
    for (const width of [360, 800, 1280]) {
      await page.setViewportSize({ width, height: 900 });
      for (const open of [false, true]) {
        await unfold(page, open);
        assert.deepEqual(await over(page, width), [], `${width} px`);
      }
    }
  });
}

// Between them they have every section of the page.
for (const name of ["plain-gable", "screened-arrays", "three-course-porch"]) {
  for (const width of [360, 800, 1280]) {
    for (const colorScheme of ["light", "dark"]) {
      test(`the report of ${name} at ${width} px, ${colorScheme}, suits everybody`, async (t) => {
        const page = await opened(t, name, { viewport: { width, height: 900 }, colorScheme, bypassCSP: true });
        await page.screenshot({ path: join(pictures, `report-${name}-${width}-${colorScheme}.png`), fullPage: true });
        await unfold(page, true);
        await page.evaluate(axe.source);
        // A drawing is one picture: its parts need not be looked at one by one.
        const { violations, passes } = await page.evaluate(() => globalThis.axe.run({ exclude: [".map svg > *"] }));
        assert.deepEqual(violations.map(({ id, nodes }) => [id, nodes.map(({ html }) => html)]), []);
        assert.ok(passes.length > 20, "axe looked at something");
      });
    }
  }
}

/** Sizes of paper in points, upright. */
const PAPER = { Letter: [612, 792], A4: [595, 842] };

for (const [format, [width, height]] of Object.entries(PAPER)) {
  // With a bid, screened, and with a sheet that is too high for a page.
  for (const name of ["plain-gable", "screened-arrays", "double-lap-cottage"]) {
    test(`the report of ${name} prints to ${format}`, async (t) => {
      const page = await opened(t, name, { colorScheme: "dark" });
      // As wide as what the margins leave: 96 px are 72 pt are 1 in.
      const room = Math.floor((width / 72 - 2 * (13 / 25.4)) * 96);
      await page.setViewportSize({ width: room, height: 900 });
      await page.emulateMedia({ media: "print" });
      const across = await page.locator(".map").evaluateAll((maps) => maps.length);
      assert.deepEqual((await over(page, room)).filter((html) => !/^<div class="map|^<svg|data-/.test(html)), []);
      const [ground, ink] = await page.evaluate(() => ["backgroundColor", "color"].map((of) => getComputedStyle(document.body)[of]));
      assert.deepEqual([ground, ink], ["rgba(0, 0, 0, 0)", "rgb(29, 39, 51)"], "print is dark on white");
      const folded = await page.locator("details:not(.long) > ul").evaluateAll((lists) =>
        lists.filter((list) => list.getBoundingClientRect().height === 0).length);
      assert.equal(folded, 0, "reasons are printed");

      const pdf = await page.pdf({ path: join(pictures, `report-${name}-${format}.pdf`), format, printBackground: true });
      const boxes = [...pdf.toString("latin1").matchAll(/\/MediaBox ?\[ ?0 0 ([\d.]+) ([\d.]+) ?\]/g)]
        .map(([, across, up]) => [Math.floor(across), Math.floor(up)]);
      const upright = boxes.filter(([across]) => across === width).length;
      const lying = boxes.filter(([across]) => across === height).length;
      assert.equal(upright + lying, boxes.length, `pages of ${format} only: ${JSON.stringify(boxes)}`);
      assert.equal(lying, across, "a page across for each map");
      assert.ok(upright >= 3 && upright < 20, `${upright} pages`);
    });
  }
}

test("four hundred posts take no book of paper", async (t) => {
  const page = await opened(t, "commercial-400");
  await page.emulateMedia({ media: "print" });
  const height = await page.evaluate(() => document.documentElement.scrollHeight);
  assert.ok(height < 20 * 1000, `${height} px are more than twenty pages`);
});
