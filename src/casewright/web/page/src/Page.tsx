import { Desk } from "./desk/Desk";
import { Join } from "./Join";
import { place } from "./route";
import { Shop } from "./shop/Shop";
import { mustJoin } from "./state";

/** The desk, or the shop at /shop. */
export function Page() {
  if (mustJoin.value) return <Join />;
  return place.value === "/shop" || place.value.startsWith("/shop/") ? <Shop /> : <Desk />;
}
