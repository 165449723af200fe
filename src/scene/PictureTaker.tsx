import { addAfterEffect, useThree } from "@react-three/fiber";
import { useEffect } from "react";

/** Takes a small picture of the scene as it is drawn next; null when the browser makes none. */
export type TakePicture = () => Promise<Blob | null>;

/** CSS px of the small picture. */
const WIDTH = 240;
const HEIGHT = 160;

/** The middle of the scene, cut to the picture's shape and made small. */
function smallOf(canvas: HTMLCanvasElement): HTMLCanvasElement {
  const small = document.createElement("canvas");
  small.width = WIDTH;
  small.height = HEIGHT;
  const pen = small.getContext("2d");
  if (pen === null || canvas.width === 0 || canvas.height === 0) return small;
  const scale = Math.max(WIDTH / canvas.width, HEIGHT / canvas.height);
  const [wide, high] = [WIDTH / scale, HEIGHT / scale];
  pen.imageSmoothingQuality = "high";
  pen.drawImage(
    canvas,
    ...([(canvas.width - wide) / 2, (canvas.height - high) / 2, wide, high] as const),
    ...([0, 0, WIDTH, HEIGHT] as const),
  );
  return small;
}

/**
 * Hands out a way to take a small picture; renders nothing. The drawing is there to be read only
 * until the browser has shown the frame, so it is read right after fiber has drawn it.
 */
export function PictureTaker({ onReady }: { onReady: (take: TakePicture | null) => void }): null {
  const gl = useThree((state) => state.gl);
  const invalidate = useThree((state) => state.invalidate);
  useEffect(() => {
    let waiting: ((picture: Blob | null) => void)[] = [];
    const stop = addAfterEffect(() => {
      if (waiting.length === 0) return;
      const told = waiting;
      waiting = [];
      smallOf(gl.domElement).toBlob(
        (picture) => {
          for (const tell of told) tell(picture);
        },
        "image/webp",
        0.85,
      );
    });
    onReady(
      () =>
        new Promise((tell) => {
          waiting.push(tell);
          invalidate();
        }),
    );
    return () => {
      stop();
      onReady(null);
      for (const tell of waiting) tell(null);
    };
  }, [gl, invalidate, onReady]);
  return null;
}
