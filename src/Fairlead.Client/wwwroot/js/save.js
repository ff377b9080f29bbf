// Hands bytes to the browser as a file, which asks or knows where files go.
const readMilliseconds = 60000;

export function save(name, type, bytes) {
  const link = document.createElement('a');
  link.href = URL.createObjectURL(new Blob([bytes], { type }));
  link.download = name;
  link.click();
  setTimeout(() => URL.revokeObjectURL(link.href), readMilliseconds);
}
