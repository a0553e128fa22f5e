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

for (const name of names) {
  for (const width of [360, 800, 1280]) {
    test(`the report of ${name} at ${width} px suits everybody`, async (t) => {
      const page = await opened(t, name, { viewport: { width, height: 900 }, bypassCSP: true });
      await page.evaluate(axe.source);
      for (const colorScheme of ["light", "dark"]) {
        await page.emulateMedia({ colorScheme });
        for (const open of [false, true]) {
          await page.evaluate((open) => document.querySelectorAll("details").forEach((details) => { details.open = open; }), open);
          if (open && name === "commercial-400") continue;
          assert.deepEqual(await over(page, width), []);
          const { violations, passes } = await page.evaluate(() => globalThis.axe.run());
          assert.deepEqual(violations.map(({ id, nodes }) => [id, nodes.map(({ html }) => html)]), []);
          assert.ok(passes.length > 20, "axe looked at something");
        }
        if (name === "plain-gable") await page.screenshot({ path: join(pictures, `report-${width}-${colorScheme}.png`), fullPage: true });
      }
    });
  }
}

/** Sizes of paper in points, upright. */
const PAPER = { Letter: [612, 792], A4: [595, 842] };

for (const [format, [width, height]] of Object.entries(PAPER)) {
  for (const name of names) {
    test(`the report of ${name} prints to ${format}`, async (t) => {
      const page = await opened(t, name, { colorScheme: "dark" });
      // As wide as what the margins leave: 96 px are 72 pt are 1 in.
      const room = Math.floor((width / 72 - 2 * (13 / 25.4)) * 96);
      await page.setViewportSize({ width: room, height: 900 });
      await page.emulateMedia({ media: "print" });
      const across = await page.locator(".map").evaluateAll((maps) => maps.length);
      const wide = (await over(page, room)).filter((html) => !html.includes("data-"));
      assert.deepEqual(wide, []);
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
      assert.ok(upright >= 3 && upright < 30, `${upright} pages`);
    });
  }
}
