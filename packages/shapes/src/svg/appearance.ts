import type { StyleProperty } from "./style-rules.js";

/**
 * Of what an element hands down to those in it, all that decides whether and how it is an outline.
 *
 * @internal
 */
export interface Appearance {
  readonly fill: string;
  readonly fillOpacity: string;
  readonly fillRule: string;
  readonly stroke: string;
  readonly strokeOpacity: string;
  readonly strokeWidth: string;
  readonly visibility: string;
}

/** What SVG starts from. @internal */
export const PLAIN: Appearance = {
  fill: "black",
  fillOpacity: "1",
  fillRule: "nonzero",
  stroke: "none",
  strokeOpacity: "1",
  strokeWidth: "1",
  visibility: "visible",
};

/** @internal */
export function inherited(from: Appearance, style: ReadonlyMap<StyleProperty, string>): Appearance {
  const of = (property: StyleProperty, before: string): string => {
    const value = style.get(property);
    return value === undefined || value === "" || value === "inherit" || value === "unset" ? before : value;
  };
  return {
    fill: of("fill", from.fill),
    fillOpacity: of("fill-opacity", from.fillOpacity),
    fillRule: of("fill-rule", from.fillRule),
    stroke: of("stroke", from.stroke),
    strokeOpacity: of("stroke-opacity", from.strokeOpacity),
    strokeWidth: of("stroke-width", from.strokeWidth),
    visibility: of("visibility", from.visibility),
  };
}

/** @internal */
export function isFilled({ fill, fillOpacity }: Appearance): boolean {
  return isPaint(fill) && !isZero(fillOpacity);
}

/** @internal */
export function isStroked({ stroke, strokeOpacity, strokeWidth }: Appearance): boolean {
  return isPaint(stroke) && !isZero(strokeOpacity) && !isZero(strokeWidth);
}

function isPaint(value: string): boolean {
  const paint = value.toLowerCase();
  return paint !== "none" && paint !== "transparent";
}

/** Whether an opacity or a width is nothing. @internal */
export function isZero(value: string): boolean {
  return Number.parseFloat(value) === 0;
}
