/** A tab that was opened from a link still reads the address for a moment. */
const RELEASE_MS = 600_000;
/** The browser reads the address of a saved file after the click has returned. */
const SAVED_MS = 60_000;

/** Lets go of the address of a file that a link or a tab may still be reading. */
export function releaseLater(url: string): void {
  setTimeout(() => URL.revokeObjectURL(url), RELEASE_MS);
}

/** Hands a file to the browser to keep. */
export function saveFile(name: string, file: Blob): void {
  const url = URL.createObjectURL(file);
  const link = document.createElement('a');
  link.href = url;
  link.download = name;
  link.click();
  setTimeout(() => URL.revokeObjectURL(url), SAVED_MS);
}

/** The same for a text. */
export function saveText(name: string, text: string, type = 'text/csv;charset=utf-8'): void {
  saveFile(name, new Blob([text], { type }));
}
