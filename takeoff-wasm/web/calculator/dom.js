// Builds elements.

/**
 * @param {string} tag
 * @param {Record<string, unknown>} properties attributes, and `onclick` and the like as listeners
 * @param {...(Node | string | null | undefined | false)} content
 */
export function element(tag, properties = {}, ...content) {
  const made = document.createElement(tag);
  for (const [name, value] of Object.entries(properties)) {
    if (name.startsWith("on")) made.addEventListener(name.slice(2), value);
    else if (value === true) made.setAttribute(name, "");
    else if (value !== undefined && value !== null && value !== false) made.setAttribute(name, value);
  }
  made.append(...content.filter((part) => part !== null && part !== undefined && part !== false));
  return made;
}
