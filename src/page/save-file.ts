/** Hands a text to the reader as a file to keep or send. */
export function saveFile(name: string, type: string, text: string): void {
  const link = document.createElement('a');
  link.href = `data:${type};charset=utf-8,${encodeURIComponent(text)}`;
  link.download = name;
  document.body.append(link);
  link.click();
  link.remove();
}
