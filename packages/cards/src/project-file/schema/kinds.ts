/** The kinds of a thing in the file; the key that names the kind tells them apart. */
export interface Kind {
  /** As in "a mat takes no runs". */
  readonly noun: string;
  /** Keys that it cannot do without, beside the one that names it. */
  readonly required: readonly string[];
  readonly optional: readonly string[];
}

/** Kinds by the key that names them. */
export type Kinds = Readonly<Record<string, Kind>>;

/** All keys that a kind takes, the one that names it first. */
export function keysOfKind(name: string, { required, optional }: Kind): readonly string[] {
  return [name, ...required, ...optional];
}

/** What JSON Schema says of kinds: exactly one naming key, and only the keys that go with it. */
export function oneOfKinds(kinds: Kinds): { readonly oneOf: Record<string, unknown>[] } {
  return {
    oneOf: Object.entries(kinds).map(([name, kind]) => ({
      title: kind.noun,
      required: [name, ...kind.required],
      propertyNames: { enum: keysOfKind(name, kind) },
    })),
  };
}
