/**
 * Looks at a page from inside the browser, which is why it is no TypeScript: what sticks out over a width in pixels, and
 * texts whose grey is too near to that of their ground (WCAG 2.1, relative luminance).
 */
function lookAtPage(width, contrast) {
  const grey = (colour) => {
    const [r = 0, g = 0, b = 0] = (colour.match(/[\d.]+/g) ?? []).map(Number);
    const linear = (value) => {
      const part = value / 255;
      return part <= 0.03928 ? part / 12.92 : ((part + 0.055) / 1.055) ** 2.4;
    };
    return 0.2126 * linear(r) + 0.7152 * linear(g) + 0.0722 * linear(b);
  };
  const ground = (element) => {
    for (let at = element; at !== null; at = at.parentElement) {
      const { backgroundColor } = getComputedStyle(at);
      if (!/, 0\)$|transparent/.test(backgroundColor)) return backgroundColor;
    }
    return "rgb(255, 255, 255)";
  };
  const all = [...document.body.querySelectorAll("*")].filter((element) => element.closest("svg") === null);
  const words = (element) => (element.textContent ?? "").slice(0, 60);
  const { left } = document.body.getBoundingClientRect();
  const sticksOut = (element) =>
    element.getBoundingClientRect().right - left > width + 1 || element.scrollWidth > width + 1;
  const hasText = (element) =>
    [...element.childNodes].some((node) => node.nodeType === Node.TEXT_NODE && node.textContent.trim() !== "");
  const isFaint = (element) => {
    const [one, other] = [grey(getComputedStyle(element).color), grey(ground(element))];
    return (Math.max(one, other) + 0.05) / (Math.min(one, other) + 0.05) < contrast;
  };
  return {
    wide: all.filter(sticksOut).map(words),
    faint: all.filter((element) => hasText(element) && isFaint(element)).map(words),
    boxes: document.querySelectorAll(".measured").length,
  };
}

globalThis.lookAtPage = lookAtPage;
