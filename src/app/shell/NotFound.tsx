/** An address that leads nowhere here. */
export function NotFound() {
  return (
    <section class="page">
      <h1>Nothing is kept at this address</h1>
      <p>Scan a card, or type its id.</p>
      <a class="primary" href="/">
        Scan
      </a>
    </section>
  );
}
