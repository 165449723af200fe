/** Tags by day, whatever the page's own light: see `--paper` and its like in the page's themes. */
const BY_DAY = { paper: "#fbf8f0", ink: "#26323a", soft: "#565e59", stake: "#d4541c" };

/** The paper tags that lie over the scene, drawn onto a picture of it where they stand, by day. */
export function drawTags(pen: CanvasRenderingContext2D, scale: number): void {
  const scene = document.querySelector<HTMLElement>(".scene");
  if (scene === null) return;
  const { left, top, width, height } = scene.getBoundingClientRect();
  pen.save();
  pen.scale(scale, scale);
  pen.beginPath();
  pen.rect(0, 0, width, height);
  pen.clip();
  pen.translate(-left, -top);
  for (const line of scene.querySelectorAll<SVGLineElement>(".scene-stalks line")) {
    if (isSeen(line)) drawStalk(pen, line, left, top);
  }
  for (const tag of scene.querySelectorAll<HTMLElement>(".scene-tag")) {
    if (isSeen(tag)) drawTag(pen, tag);
  }
  pen.restore();
}

function isSeen(element: Element): boolean {
  return element.checkVisibility({ visibilityProperty: true });
}

function drawStalk(
  pen: CanvasRenderingContext2D,
  line: SVGLineElement,
  left: number,
  top: number,
): void {
  const at = (name: "x1" | "y1" | "x2" | "y2"): number => line[name].baseVal.value;
  pen.strokeStyle = BY_DAY.ink;
  pen.lineWidth = 1;
  pen.beginPath();
  pen.moveTo(left + at("x1"), top + at("y1"));
  pen.lineTo(left + at("x2"), top + at("y2"));
  pen.stroke();
}

function drawTag(pen: CanvasRenderingContext2D, tag: HTMLElement): void {
  const box = tag.getBoundingClientRect();
  const look = getComputedStyle(tag);
  pen.fillStyle = BY_DAY.paper;
  pen.fillRect(box.left, box.top, box.width, box.height);
  pen.strokeStyle = tag.ariaPressed === "true" ? BY_DAY.stake : BY_DAY.ink;
  pen.lineWidth = Number.parseFloat(look.borderTopWidth);
  pen.strokeRect(box.left, box.top, box.width, box.height);
  for (const part of tag.children) {
    const { left, top, width, height } = part.getBoundingClientRect();
    const { fontWeight, fontSize, fontFamily } = getComputedStyle(part);
    pen.fillStyle = part.localName === "b" ? BY_DAY.ink : BY_DAY.soft;
    // A canvas does not take the whole of a style's font: it has stretches in percent.
    pen.font = `${fontWeight} ${fontSize} ${fontFamily}`;
    pen.textAlign = "center";
    pen.textBaseline = "middle";
    pen.fillText(ownText(part), left + width / 2, top + height / 2, width);
  }
}

/** The text that stands in an element itself: not what is said of it for those who do not see it. */
function ownText(element: Element): string {
  return [...element.childNodes]
    .filter((node) => node instanceof Text)
    .map(({ data }) => data)
    .join("");
}
