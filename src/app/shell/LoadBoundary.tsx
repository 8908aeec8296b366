import type { ComponentChildren } from 'preact';
import { useErrorBoundary } from 'preact/hooks';
import { ErrorBoundary } from 'preact-iso';

/** Stands where a screen broke, so that the rest of the app goes on. */
export function LoadBoundary({ children }: { readonly children: ComponentChildren }) {
  const [error] = useErrorBoundary();
  if (error !== undefined) return <NotShown error={error} />;
  return <ErrorBoundary>{children}</ErrorBoundary>;
}

/** Why a screen is not there, and the way to it. */
export function NotShown({ error }: { readonly error: unknown }) {
  return (
    <section class="page" role="alert">
      <h1>This screen could not be shown</h1>
      <p>{error instanceof Error ? error.message : String(error)}</p>
      <p>What was confirmed is kept. Load the page again when the hub can be reached.</p>
      <button type="button" class="primary" onClick={() => location.reload()}>
        Load again
      </button>
    </section>
  );
}
