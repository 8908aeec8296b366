// Not by print's face: that would bring the PDF maker onto the page.
import type { Manifest } from '../../../print/index.ts';
import { OFFICE_600 } from '../../../print/qr/profiles.ts';
import { ReadBackLine } from './ReadBackLine.tsx';
import { documentFault } from './readBackWords.ts';

/** The same of pages that are no labels: their codes and every line of their words. They go to a printer for whole sheets. */
export function DocumentReadBack({ pdf, manifest }: { readonly pdf: Blob; readonly manifest: Manifest }) {
  return <ReadBackLine pdf={pdf} manifest={manifest} printer={OFFICE_600} what="the PDF" say={documentFault} />;
}
