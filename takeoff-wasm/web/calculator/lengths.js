// Lengths as a tape shows them. The core reads what is typed; these only write.

const SIXTEENTHS_PER_INCH = 16;
const MM_PER_SIXTEENTH = 25.4 / SIXTEENTHS_PER_INCH;

/** What a press of an arrow key moves a post by, alone and with Shift. */
export const STEPS = {
  imperial: { alone: 4 * MM_PER_SIXTEENTH, shift: 25.4, words: "1/4 in, with Shift by 1 in" },
  metric: { alone: 5, shift: 25, words: "5 mm, with Shift by 25 mm" },
};

/**
 * A length to the nearest mark of the tape (1/16 in or 1 mm), in words that a job file takes.
 *
 * @param {number} mm
 * @param {"imperial" | "metric"} display
 * @returns {string} such as `3 ft 4 1/2 in` or `1029 mm`
 */
export function length(mm, display) {
  return written(mm, display, feetAndInches);
}

/** The same without feet, as the sizes of tiles are given. */
export function shortLength(mm, display) {
  return written(mm, display, inches);
}

/** A length to the nanometre, in words that a job file takes. */
export function exact(mm) {
  return `${mm.toFixed(6).replace(/\.?0+$/, "")} mm`;
}

/** A length rounded to the nearest mark of the tape, mm. */
export function onTape(mm, display) {
  const mark = display === "metric" ? 1 : MM_PER_SIXTEENTH;
  return Math.round(mm / mark) * mark;
}

function written(mm, display, imperial) {
  const marks = Math.round(Math.abs(mm) / (display === "metric" ? 1 : MM_PER_SIXTEENTH));
  const sign = mm < 0 && marks > 0 ? "-" : "";
  return sign + (display === "metric" ? `${marks} mm` : imperial(marks));
}

function feetAndInches(sixteenths) {
  const feet = Math.floor(sixteenths / (12 * SIXTEENTHS_PER_INCH));
  const rest = sixteenths % (12 * SIXTEENTHS_PER_INCH);
  return [feet > 0 && `${feet} ft`, (rest > 0 || feet === 0) && inches(rest)].filter(Boolean).join(" ");
}

function inches(sixteenths) {
  const whole = Math.floor(sixteenths / SIXTEENTHS_PER_INCH);
  const fraction = reduced(sixteenths % SIXTEENTHS_PER_INCH, SIXTEENTHS_PER_INCH);
  return `${[whole || "", fraction].filter(Boolean).join(" ") || 0} in`;
}

function reduced(part, whole) {
  if (part === 0) return "";
  return part % 2 ? `${part}/${whole}` : reduced(part / 2, whole / 2);
}
