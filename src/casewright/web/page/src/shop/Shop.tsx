/** Pages for the phone in the shop. */
export function Shop() {
  return <main class="shop" />;
}
