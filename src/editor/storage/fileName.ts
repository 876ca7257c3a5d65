/** The name of a home's file: its title in small letters, without marks a file system may refuse. */
export function fileName(title: string): string {
  const plain = title
    .normalize('NFKD')
    .replace(/[\u0300-\u036f]/g, '')
    .toLowerCase()
    .replace(/[^\p{L}\p{N}]+/gu, '-')
    .replace(/^-+|-+$/g, '')
    .slice(0, 60);
  return `${plain || 'home'}.home.json`;
}
