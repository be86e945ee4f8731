// Characters that would break a line, hide, or turn the reading direction of what follows; lone surrogates too.
const UNSHOWABLE =
  /[\u0000-\u0008\u000e-\u001f\u007f-\u009f\u00ad\u200b-\u200f\u202a-\u202e\u2060-\u206f\ufeff\ufff9-\uffff\ud800-\udfff]/gu;

// Marks stacked on a letter reach into the lines over and under it; one beside those that letters are made with is kept.
const STACKED = /([\u0300-\u036f])[\u0300-\u036f]+/g;

/** What a reader sees: the name or else the id, on one line, without characters that cannot be shown or break a line. */
export function displayName(named: { readonly id: string; readonly name?: string | undefined }): string {
  for (const text of [named.name ?? "", named.id]) {
    const shown = text
      .replace(UNSHOWABLE, "")
      .normalize("NFC")
      .replace(STACKED, "$1")
      .replace(/\s+/gu, " ")
      .trim();
    if (shown !== "") return shown;
  }
  return "(no name)";
}
