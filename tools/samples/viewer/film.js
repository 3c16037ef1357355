// What the library wants to know of a film: its metadata modules and its pixels (uncompressed, one frame).
import { utilities } from '@cornerstonejs/core';

/** Film metadata by module name. A radiograph has no place in the patient, so the film's corner is the origin. */
export function filmMetadata(film, type) {
  const [row, column] = [film.PixelSpacing, film.ImagerPixelSpacing, [1, 1]].find(s => s?.length === 2).map(Number);
  switch (type) {
    case 'imagePlaneModule':
      return {
        rows: film.Rows, columns: film.Columns, rowPixelSpacing: row, columnPixelSpacing: column, pixelSpacing: [row, column],
        rowCosines: [1, 0, 0], columnCosines: [0, 1, 0], imageOrientationPatient: [1, 0, 0, 0, 1, 0],
        imagePositionPatient: [0, 0, 0], frameOfReferenceUID: film.FrameOfReferenceUID ?? film.SOPInstanceUID,
      };
    case 'imagePixelModule':
      return {
        bitsAllocated: film.BitsAllocated, bitsStored: film.BitsStored, highBit: film.HighBit, samplesPerPixel: 1,
        pixelRepresentation: film.PixelRepresentation, photometricInterpretation: film.PhotometricInterpretation,
        rows: film.Rows, columns: film.Columns,
      };
    case 'generalSeriesModule':
      return { modality: film.Modality, seriesInstanceUID: film.SeriesInstanceUID };
    case 'sopCommonModule':
      return { sopClassUID: film.SOPClassUID, sopInstanceUID: film.SOPInstanceUID };
    case 'instance':
      return film;
    case 'frameNumber':
      return 1;
    default:
      return undefined;
  }
}

/** The film as the library's image. */
export function filmImage(film, imageId) {
  const { Rows: rows, Columns: columns } = film;
  const bytes = film.PixelData instanceof ArrayBuffer ? film.PixelData : film.PixelData[0];
  const pixels = film.BitsAllocated === 8 ? new Uint8Array(bytes) : new Uint16Array(bytes);
  const plane = filmMetadata(film, 'imagePlaneModule');
  return {
    imageId, rows, columns, height: rows, width: columns, color: false, rgba: false, numberOfComponents: 1,
    minPixelValue: 0, maxPixelValue: 2 ** film.BitsStored - 1, slope: 1, intercept: 0,
    windowCenter: 2 ** (film.BitsStored - 1), windowWidth: 2 ** film.BitsStored, voiLUTFunction: 'LINEAR',
    rowPixelSpacing: plane.rowPixelSpacing, columnPixelSpacing: plane.columnPixelSpacing,
    invert: film.PhotometricInterpretation === 'MONOCHROME1', sizeInBytes: pixels.byteLength, dataType: pixels.constructor.name,
    getPixelData: () => pixels, getCanvas: () => undefined,
    voxelManager: utilities.VoxelManager.createImageVoxelManager({ width: columns, height: rows, numberOfComponents: 1, scalarData: pixels }),
  };
}
