import { useState } from 'preact/hooks';
import { useApp } from '../model/app.ts';
import { WHAT_WORDS, type What } from './batch.ts';

interface PdfPreviewProps {
  readonly url: string;
  /** What is on it; a calibration page is no kind of label. */
  readonly what: What | 'calibration';
}

/** The PDF itself. A phone without a viewer gets the link only; at night the white page is lit only when asked for. */
export function PdfPreview({ url, what }: PdfPreviewProps) {
  const { settings, clock } = useApp();
  const [asked, ask] = useState(false);
  const canShow = navigator.pdfViewerEnabled;
  const name = what === 'calibration' ? 'calibration-page' : WHAT_WORDS[what].many.replace(' ', '-');
  const shows = canShow && (asked || settings.look.value === 'day');
  return (
    <div class="preview">
      <p class="preview-links">
        <a class="secondary" href={url} target="_blank" rel="noreferrer">
          Open the PDF
        </a>
        <a class="secondary" href={url} download={`${name}-${clock.today.value}.pdf`}>
          Save the PDF
        </a>
      </p>
      {canShow && !shows ? (
        <button type="button" class="link" onClick={() => ask(true)}>
          Show the preview (white paper, bright)
        </button>
      ) : null}
      {shows ? <iframe src={`${url}#view=FitH`} title="Preview of the PDF" /> : null}
    </div>
  );
}
