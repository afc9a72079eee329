/** Hands a file to the browser's downloads. */
export function saveFile(name: string, blob: Blob): void {
  const address = URL.createObjectURL(blob);
  const link = document.createElement('a');
  link.href = address;
  link.download = name;
  link.click();
  // The download reads the address after this turn; it can go once the browser has taken hold of it.
  setTimeout(() => URL.revokeObjectURL(address), 60_000);
}
