/** So many events written at once hold the screen up for a while. */
const MANY = 500;
const FRAMES_MS = 50;

/** Lets the screen say what is going on before many things are written; resolves at once for a few. */
export function shown(count: number): Promise<void> {
  // No frame is asked for: a screen that is out of sight has none.
  return count < MANY ? Promise.resolve() : new Promise((resolve) => setTimeout(resolve, FRAMES_MS));
}
