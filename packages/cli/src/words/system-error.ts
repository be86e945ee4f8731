/** Plain words for the usual errors of the operating system. */
const WORDS: Readonly<Record<string, string>> = {
  EACCES: "you have no permission for it",
  EPERM: "it is protected, or you have no permission for it",
  ENOENT: "there is no such file or folder",
  ENOTDIR: "a part of its path is a file, not a folder",
  EISDIR: "it is a folder, not a file",
  ENOSPC: "the disk is full",
  EDQUOT: "your share of the disk is used up",
  EROFS: "the disk can only be read",
  EBUSY: "another program is using it",
  EMFILE: "too many files are open",
  ENAMETOOLONG: "its name is too long",
  EEXIST: "something of that name came up in the meantime",
  ENOTEMPTY: "a folder that should be empty is not",
  EIO: "the disk reports an error",
  ELOOP: "its links lead in a circle",
};

/** Says in plain words what an operating system's error code means, such as `ENOSPC`. */
export function systemErrorWords(code: string): string {
  return WORDS[code] ?? `the operating system reports ${code}`;
}
