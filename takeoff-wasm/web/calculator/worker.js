// The core, off the page's thread.
import init, * as core from "../pkg/tilepost.js";

const ready = init();

addEventListener("message", async ({ data: { id, entry, texts } }) => {
  try {
    await ready;
    postMessage({ id, text: core[entry](...texts) });
  } catch (error) {
    postMessage({ id, failure: String(error), lost: error instanceof WebAssembly.RuntimeError });
  }
});
