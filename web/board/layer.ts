/** One canvas of the board. */
export interface Layer {
  /** Asks for it to be drawn anew with the next frame, once however often it is asked. */
  readonly ask: () => void;
  /** Gives it a size, CSS pixels, and draws it at once: a canvas that changes its size is wiped. */
  readonly size: (width: number, height: number) => void;
  readonly stop: () => void;
}

/** A layer that `draw` draws in CSS pixels from its upper left corner, as finely as the screen shows. */
export function layerOf(canvas: HTMLCanvasElement, draw: (pen: CanvasRenderingContext2D) => void): Layer {
  const pen = canvas.getContext('2d');
  if (!pen) throw new RangeError('the browser gives no canvas to draw on');
  let asked = 0;
  const drawNow = (): void => {
    asked = 0;
    pen.clearRect(0, 0, canvas.width, canvas.height);
    pen.save();
    draw(pen);
    pen.restore();
  };
  return {
    ask: () => {
      asked ||= requestAnimationFrame(drawNow);
    },
    size: (width, height) => {
      const finer = window.devicePixelRatio;
      canvas.width = Math.round(width * finer);
      canvas.height = Math.round(height * finer);
      canvas.style.width = `${width}px`;
      canvas.style.height = `${height}px`;
      pen.scale(finer, finer);
      cancelAnimationFrame(asked);
      drawNow();
    },
    stop: () => cancelAnimationFrame(asked),
  };
}
