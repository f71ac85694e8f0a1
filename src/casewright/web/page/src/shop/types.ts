/** What the server says of the shop; every type comes from its schema. */
import type { components } from "../api.gen";

type Schemas = components["schemas"];
export type Book = Schemas["ShopBook"];
export type Card = Schemas["ShopCard"];
export type Figure = Schemas["ShopFigure"];
export type Row = Schemas["ShopRow"];
export type Tick = Schemas["ShopTick"];
export type Reading = Schemas["ShopReading"];
export type Part = Schemas["ShopPart"];
export type Station = Schemas["ShopStation"];
export type Now = Schemas["ShopNow"];
export type Rest = Schemas["ShopRest"];
export type Gone = Schemas["ShopGone"];
export type Written = Schemas["ShopEntry"];
export type Bit = Schemas["Bit"];
export type Line = (string | Bit)[];

/** What a card is called: what is done, where no size is set by it. */
export function nameOf(card: Card): string {
  return card.big.length > 0 || card.lead === "" ? card.title : card.lead;
}
