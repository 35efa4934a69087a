"use strict";
// Gives the fabrics other colours and keeps them in this browser; tells the command that makes a sheet of what was chosen.
(() => {
  const main = document.querySelector("main");
  const inputs = [...main.querySelectorAll("input[type=color]")];
  if (!inputs.length) return;
  const key = main.dataset.keeps;
  const line = document.getElementById("line");
  const said = document.getElementById("said");
  const reset = document.getElementById("reset");
  const INK = "#17303f";
  const PAPER = "#ffffff";

  // Relative luminance (WCAG 2.2), as the drawings reckon it.
  const light = (colour) =>
    [0.2126, 0.7152, 0.0722].reduce((sum, part, place) => {
      const channel = parseInt(colour.slice(1 + 2 * place, 3 + 2 * place), 16) / 255;
      return sum + part * (channel <= 0.04045 ? channel / 12.92 : ((channel + 0.055) / 1.055) ** 2.4);
    }, 0);
  const changed = () => inputs.filter((input) => input.value !== input.defaultValue);
  const paint = (input) => {
    const number = input.dataset.number;
    for (const shape of main.querySelectorAll(`.cloth-${number} > *`)) shape.setAttribute("fill", input.value);
    for (const edge of main.querySelectorAll(`.edge-${number}`)) {
      const dark = light(input.value) <= 0.18;
      for (const shape of edge.children) shape.setAttribute("stroke", dark ? PAPER : INK);
      // Light lines lie under dark ones, so that they only show where dark meets dark.
      const edges = [...edge.parentNode.querySelectorAll("[class^=edge]")];
      const end = edges[edges.length - 1];
      if (dark) edges[0].before(edge);
      else if (end !== edge) end.after(edge);
    }
  };
  // One word or option after the other, none of them broken over two lines where it fits on one.
  const write = (parts) => {
    const words = parts.map((part) => Object.assign(document.createElement("span"), { textContent: part }));
    line.replaceChildren(...words.flatMap((word, place) => (place ? [" ", word] : [word])));
  };
  const tell = () => {
    const size = main.querySelector("input[name=size]:checked");
    const parts = line.dataset.command.split(" ");
    if (size?.value) parts.push(`--size ${size.value.includes(" ") ? `"${size.value}"` : size.value}`);
    for (const input of changed()) parts.push(`--fabric ${input.dataset.fabric}=${input.value}`);
    write([...parts, `-o ${line.dataset.path}`]);
    reset.disabled = !changed().length;
    said.textContent = "";
  };
  const kept = () => {
    try {
      const colours = JSON.parse(localStorage.getItem(key));
      return colours !== null && typeof colours === "object" ? colours : {};
    } catch {
      return {};
    }
  };
  const restore = () => {
    const colours = kept();
    for (const input of inputs) {
      const colour = Object.hasOwn(colours, input.dataset.fabric) ? colours[input.dataset.fabric] : "";
      input.value = /^#[0-9a-f]{6}$/.test(colour) ? colour : input.defaultValue;
      paint(input);
    }
    tell();
  };
  const keep = () => {
    try {
      const colours = Object.fromEntries(changed().map((input) => [input.dataset.fabric, input.value]));
      if (changed().length) localStorage.setItem(key, JSON.stringify(colours));
      else localStorage.removeItem(key);
    } catch {
      // A browser that keeps nothing for pages still paints.
    }
    tell();
  };
  const copy = async () => {
    getSelection().selectAllChildren(line);
    try {
      await navigator.clipboard.writeText(line.textContent);
      said.textContent = said.dataset.copied;
    } catch {
      said.textContent = document.execCommand("copy") ? said.dataset.copied : said.dataset.selected;
    }
  };

  for (const input of inputs)
    input.addEventListener("input", () => {
      paint(input);
      keep();
    });
  for (const size of main.querySelectorAll("input[name=size]")) size.addEventListener("change", tell);
  reset.addEventListener("click", () => {
    for (const input of inputs) {
      input.value = input.defaultValue;
      paint(input);
    }
    keep();
    inputs[0].focus();
  });
  document.getElementById("copy").addEventListener("click", copy);
  window.addEventListener("storage", restore);
  document.getElementById("colouring").hidden = document.getElementById("to-colours").hidden = false;
  restore();
})();
