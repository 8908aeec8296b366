import type { ComponentChildren } from 'preact';
import { useEffect } from 'preact/hooks';
import { useLocation } from 'preact-iso';

const PLACES = [
  { path: '/', words: 'Scan', shortcut: '1', mark: 'M3 8V3h5M16 3h5v5M21 16v5h-5M8 21H3v-5M8 12h8' },
  { path: '/rounds', words: 'Rounds', shortcut: '2', mark: 'M4 6h2M9 6h11M4 12h2M9 12h11M4 18h2M9 18h11' },
  { path: '/racks', words: 'Racks', shortcut: '3', mark: 'M4 3v18M20 3v18M4 7h16M4 12h16M4 17h16' },
  { path: '/find', words: 'Find', shortcut: '4', mark: 'M16 10a6 6 0 1 1-12 0a6 6 0 0 1 12 0M14.5 14.5L21 21' },
  { path: '/more', words: 'More', shortcut: '5', mark: 'M4 4h12l4 4v12H4zM16 4v4h4M8 13h8M8 17h5' },
] as const;

/** The five places of the app, at the thumb; on a desk they stand at the left. */
export function BottomBar({ path }: { readonly path: string }) {
  useShortcuts();
  return (
    <nav class="bottom-bar" aria-label="Main">
      {PLACES.map((place) => (
        <Place key={place.path} {...place} here={isHere(place.path, path)}>
          {place.words}
        </Place>
      ))}
    </nav>
  );
}

interface PlaceProps {
  readonly path: string;
  readonly shortcut: string;
  readonly mark: string;
  readonly here: boolean;
  readonly children: ComponentChildren;
}

function Place({ path, shortcut, mark, here, children }: PlaceProps) {
  return (
    <a class="bottom-place" href={path} aria-keyshortcuts={`Alt+${shortcut}`} aria-current={here ? 'page' : undefined}>
      <svg viewBox="0 0 24 24" aria-hidden="true">
        <path d={mark} />
      </svg>
      <span>{children}</span>
    </a>
  );
}

/** Alt and a digit: plain keys belong to typing scanners. */
function useShortcuts(): void {
  const { route } = useLocation();
  useEffect(() => {
    const onKey = (event: KeyboardEvent) => {
      const place = event.altKey && !event.ctrlKey && PLACES.find((one) => event.code === `Digit${one.shortcut}`);
      if (!place) return;
      event.preventDefault();
      route(place.path);
    };
    addEventListener('keydown', onKey);
    return () => removeEventListener('keydown', onKey);
  }, [route]);
}

/** Books and Print are reached from More, records and places from anywhere. */
function isHere(place: string, path: string): boolean {
  if (place === '/') return path === '/';
  if (place === '/more')
    return ['/more', '/books', '/print', '/treatments'].includes(path) || path.startsWith('/print/');
  if (place === '/racks') return path === '/racks' || path.startsWith('/place/');
  return path === place;
}
