/** A PDF that cannot be read: damaged, encrypted, or no PDF. The message is the end of a sentence that names the file. */
export class PdfFault extends Error {
  override readonly name = 'PdfFault';
}
