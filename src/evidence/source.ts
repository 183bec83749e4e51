/** One publication or standard. Authors are left out on purpose: title, journal, year, volume and pages identify it. */
export interface Source {
  readonly title?: string;
  /** What it is about, where the title was not read. */
  readonly about?: string;
  readonly container?: string;
  readonly year?: number;
  readonly volume?: string;
  readonly pages?: string;
  readonly doi?: string;
  readonly pmid?: string;
  readonly url?: string;
  /** What of the record could not be checked. */
  readonly note?: string;
}
