/// <reference lib="dom" />

/** A drawing as an image on white, so many pixels along its longer side; base64 of a PNG. */
export async function imageOf(svg: string, length: number): Promise<string | undefined> {
  const image = new Image();
  image.src = `data:image/svg+xml;charset=utf-8,${encodeURIComponent(svg)}`;
  await image.decode();
  const scale = length / Math.max(image.naturalWidth, image.naturalHeight, 1);
  const canvas = document.createElement('canvas');
  canvas.width = Math.max(1, Math.round(image.naturalWidth * scale));
  canvas.height = Math.max(1, Math.round(image.naturalHeight * scale));
  const ground = canvas.getContext('2d');
  if (ground === null) return undefined;
  ground.fillStyle = '#ffffff';
  ground.fillRect(0, 0, canvas.width, canvas.height);
  ground.drawImage(image, 0, 0, canvas.width, canvas.height);
  return canvas.toDataURL('image/png').split(',')[1];
}
