import { useState } from 'preact/hooks';
import { useApp } from '../model/app.ts';
import { usePrintFrame } from './usePrintFrame.ts';

interface PdfPreviewProps {
  readonly url: string;
  /** What a saved file is called, before its day. */
  readonly name: string;
  /** The file leaves for the printer. */
  readonly begin?: () => void;
}

/** The PDF itself. A phone without a viewer gets the links only; at night the white page is lit only when asked for. */
export function PdfPreview({ url, name, begin }: PdfPreviewProps) {
  const { settings, clock } = useApp();
  const [asked, ask] = useState(false);
  const { frame, loaded, print } = usePrintFrame(url, begin);
  const canShow = navigator.pdfViewerEnabled;
  const shows = canShow && (asked || settings.look.value === 'day');
  return (
    <div class="preview">
      <p class="preview-links">
        {canShow ? (
          <button type="button" class="secondary" onClick={print}>
            Print
          </button>
        ) : null}
        <a class="secondary" href={url} target="_blank" rel="noreferrer" onClick={begin}>
          Open the PDF
        </a>
        <a
          class="secondary"
          href={url}
          onClick={begin}
          download={`${name.replaceAll(' ', '-')}-${clock.today.value}.pdf`}
        >
          Save the PDF
        </a>
      </p>
      {canShow && !shows ? (
        <button type="button" class="link" onClick={() => ask(true)}>
          Show the preview (white paper, bright)
        </button>
      ) : null}
      {canShow ? (
        <iframe
          ref={frame}
          // Printing goes by the button above, which the log hears of; the viewer's own bar has one that nobody hears of.
          src={`${url}#toolbar=0&view=FitH`}
          title="Preview of the PDF"
          onLoad={loaded}
          // Unseen it is there to be printed from.
          {...(shows ? {} : { class: 'preview-unseen', 'aria-hidden': true, tabIndex: -1 })}
        />
      ) : null}
    </div>
  );
}
