// A chosen picture, scaled down and written anew as JPEG: so it is small, stands upright, and tells nothing of the camera or the place.
const most = 1600;
const quality = 0.85;
export async function taken(input) {
    const file = input.files[0];
    if (!file) return null;
    const picture = await createImageBitmap(file, { imageOrientation: 'from-image' });
    const scale = Math.min(1, most / Math.max(picture.width, picture.height));
    const canvas = document.createElement('canvas');
    canvas.width = Math.max(1, Math.round(picture.width * scale));
    canvas.height = Math.max(1, Math.round(picture.height * scale));
    const pen = canvas.getContext('2d');
    pen.fillStyle = '#fff';
    pen.fillRect(0, 0, canvas.width, canvas.height);
    pen.drawImage(picture, 0, 0, canvas.width, canvas.height);
    picture.close();
    input.value = '';
    return canvas.toDataURL('image/jpeg', quality).split(',')[1];
}
