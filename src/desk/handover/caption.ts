/** The strip below a picture: what it is of, and what it is not. */

const LOOKS = {
  paper: "#f6f1e4",
  ink: "#26323a",
  strong: '600 1px "Public Sans Variable", "Public Sans", sans-serif',
  plain: '400 1px "Public Sans Variable", "Public Sans", sans-serif',
};

/** px of letters, and between lines, for each px of a CSS px. */
const TEXT = { size: 12.5, row: 17, side: 12, above: 8 };

function inLines(pen: CanvasRenderingContext2D, text: string, width: number): string[] {
  const lines: string[] = [];
  for (const word of text.split(" ")) {
    const last = lines.at(-1);
    const longer = last === undefined ? word : `${last} ${word}`;
    if (last === undefined || pen.measureText(longer).width > width) lines.push(word);
    else lines[lines.length - 1] = longer;
  }
  return lines;
}

/** The canvas of a picture with a caption below it: its first line stands out. */
export function withCaption(
  picture: ImageData,
  caption: readonly string[],
  scale: number,
): { canvas: HTMLCanvasElement; pen: CanvasRenderingContext2D } {
  const canvas = document.createElement("canvas");
  const pen = canvas.getContext("2d", { willReadFrequently: true });
  if (pen === null) throw new Error("this browser gives no canvas to draw a picture on");
  const font = (look: string): string => look.replace("1px", `${TEXT.size * scale}px`);
  const width = picture.width - 2 * TEXT.side * scale;
  const lines = caption.flatMap((text, i) => {
    const look = font(i === 0 ? LOOKS.strong : LOOKS.plain);
    pen.font = look;
    return inLines(pen, text, width).map((line) => ({ line, look }));
  });
  canvas.width = picture.width;
  canvas.height = picture.height + Math.ceil((2 * TEXT.above + lines.length * TEXT.row) * scale);
  pen.fillStyle = LOOKS.paper;
  pen.fillRect(0, 0, canvas.width, canvas.height);
  pen.putImageData(picture, 0, 0);
  pen.fillStyle = LOOKS.ink;
  pen.fillRect(0, picture.height, canvas.width, Math.max(1, scale));
  pen.textBaseline = "middle";
  lines.forEach(({ line, look }, i) => {
    pen.font = look;
    const y = picture.height + (TEXT.above + (i + 0.5) * TEXT.row) * scale;
    pen.fillText(line, TEXT.side * scale, y);
  });
  return { canvas, pen };
}
