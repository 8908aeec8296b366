import { useEffect, useState } from 'preact/hooks';
import type { Picture } from '../../core/index.ts';

/** The address of a picture for as long as it is shown; null for none. The page’s rules let only `blob:` show it. */
export function useUrl(picture: Picture | null): string | null {
  const [url, setUrl] = useState<string | null>(null);
  useEffect(() => {
    if (picture === null) {
      setUrl(null);
      return;
    }
    const made = URL.createObjectURL(blobOf(picture));
    setUrl(made);
    return () => URL.revokeObjectURL(made);
  }, [picture]);
  return url;
}

function blobOf({ mime, base64 }: Picture): Blob {
  const letters = atob(base64);
  return new Blob([Uint8Array.from(letters, (letter) => letter.charCodeAt(0))], { type: mime });
}
