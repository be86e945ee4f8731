import type { NamedCost, Rates } from "../project.js";
import type { Written } from "./check-structure.js";
import { readDecimal } from "./read-decimal.js";
import { type Reading, readText } from "./reading.js";
import type { ProjectFile } from "./schema/project-schema.js";
import { pathTo } from "./value-path.js";

const LONGEST_CURRENCY = 12;

/** Reads what work and what is used up cost; `null` where nothing is said of it. */
export function readRates(rates: Written<ProjectFile["rates"]>, reading: Reading): Rates | null {
  if (rates === undefined) return null;
  const at = (key: keyof typeof rates) => pathTo("rates", key);
  const ribbons = readCosts(rates.ribbons, at("ribbons"), "ribbonCost", reading);
  const consumables = readCosts(rates.consumables, at("consumables"), "consumable", reading);
  const factor = readDecimal(rates["price-factor"], at("price-factor"), "priceFactor", reading);
  return {
    currency: readText(rates.currency, at("currency"), reading, LONGEST_CURRENCY),
    hour: readDecimal(rates.hour, at("hour"), "hour", reading),
    minutesPerCard: readDecimal(rates["minutes-per-card"], at("minutes-per-card"), "minutes", reading),
    ...(ribbons.length === 0 ? {} : { ribbons }),
    ...(consumables.length === 0 ? {} : { consumables }),
    ...(factor === null ? {} : { priceFactor: factor }),
  };
}

function readCosts(
  costs: Readonly<Record<string, string | number | undefined>> | undefined,
  path: string,
  wording: "ribbonCost" | "consumable",
  reading: Reading,
): readonly NamedCost[] {
  return Object.entries(costs ?? {}).flatMap(([name, value]) => {
    const cost = readDecimal(value, pathTo(path, name), wording, reading);
    return cost === null ? [] : [{ name, cost }];
  });
}
