/** One publication or standard. Authors are left out on purpose: title, journal, year, volume and pages identify it. */
export interface Source {
  /** Title of the publication, where it was read. */
  readonly title?: string;
  /** What it is about, where the title was not read. */
  readonly about?: string;
  /** Journal, book or proceedings that it appeared in. */
  readonly container?: string;
  /** Year of publication. */
  readonly year?: number;
  /** Volume, with the issue where known. */
  readonly volume?: string;
  /** Pages or article number. */
  readonly pages?: string;
  /** DOI, without a resolver address. */
  readonly doi?: string;
  /** PubMed identifier. */
  readonly pmid?: string;
  /** Web address. */
  readonly url?: string;
  /** What of the record could not be checked. */
  readonly note?: string;
}
