/** What the browser may load and do on our pages: nothing from elsewhere, no inline script, the camera for us only. */
const POLICY = [
  "default-src 'none'",
  "script-src 'self' 'wasm-unsafe-eval'",
  "style-src 'self'",
  "img-src 'self' data: blob:",
  "media-src 'self' blob:",
  "connect-src 'self'",
  "worker-src 'self' blob:",
  // The preview of a PDF that this page made itself.
  'frame-src blob:',
  "font-src 'self'",
  "manifest-src 'self'",
  "object-src 'none'",
  "base-uri 'none'",
  "form-action 'none'",
  "frame-ancestors 'none'",
].join('; ');

/** On every reply of the hub. */
export const SECURITY_HEADERS: Readonly<Record<string, string>> = {
  'content-security-policy': POLICY,
  'x-content-type-options': 'nosniff',
  'x-frame-options': 'DENY',
  'referrer-policy': 'no-referrer',
  'cross-origin-opener-policy': 'same-origin',
  'cross-origin-resource-policy': 'same-origin',
  'permissions-policy': 'camera=(self), microphone=(), geolocation=()',
};

const TYPES: Readonly<Record<string, string>> = {
  html: 'text/html; charset=utf-8',
  js: 'text/javascript; charset=utf-8',
  mjs: 'text/javascript; charset=utf-8',
  css: 'text/css; charset=utf-8',
  json: 'application/json; charset=utf-8',
  webmanifest: 'application/manifest+json; charset=utf-8',
  wasm: 'application/wasm',
  svg: 'image/svg+xml',
  png: 'image/png',
  jpg: 'image/jpeg',
  webp: 'image/webp',
  ico: 'image/x-icon',
  ttf: 'font/ttf',
  woff2: 'font/woff2',
  mp3: 'audio/mpeg',
  wav: 'audio/wav',
  pdf: 'application/pdf',
  txt: 'text/plain; charset=utf-8',
};
const PACKABLE = new Set(['html', 'js', 'mjs', 'css', 'json', 'webmanifest', 'wasm', 'svg', 'ttf', 'txt']);

/** The media type of a file by its name. */
export function typeOf(path: string): string {
  return TYPES[endOf(path)] ?? 'application/octet-stream';
}

/** True where packing makes a file smaller. */
export function isPackable(path: string): boolean {
  return PACKABLE.has(endOf(path));
}

/** A name that carries a hash of its content never changes; anything else is asked for again. */
export function cacheOf(path: string): string {
  return /^\/assets\/.+-[\w-]{8,}\.\w+$/.test(path) ? 'public, max-age=31536000, immutable' : 'no-cache';
}

function endOf(path: string): string {
  return path.slice(path.lastIndexOf('.') + 1).toLowerCase();
}
