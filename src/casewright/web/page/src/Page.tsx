import { useEffect } from "preact/hooks";
import { Desk } from "./desk/Desk";
import { Join } from "./Join";
import { place } from "./route";
import { Shop } from "./shop/Shop";
import { mustJoin, refresh } from "./state";

/** The desk, or the shop at /shop; news of the job are followed at the desk alone. */
export function Page() {
  const isShop = place.value === "/shop" || place.value.startsWith("/shop/");
  useEffect(() => {
    if (!isShop) void refresh();
  }, [isShop]);
  if (mustJoin.value) return <Join />;
  return isShop ? <Shop /> : <Desk />;
}
