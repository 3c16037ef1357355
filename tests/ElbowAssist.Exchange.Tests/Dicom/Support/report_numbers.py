"""Prints every number and every place of a structured report as pydicom reads it, one a line."""
import sys
import pydicom

def walk(item):
    name = item.ConceptNameCodeSequence[0].CodeMeaning if "ConceptNameCodeSequence" in item else ""
    if item.ValueType == "NUM":
        measured = item.MeasuredValueSequence[0]
        print("NUM", name, measured.NumericValue, measured.MeasurementUnitsCodeSequence[0].CodeValue, sep="|")
    if item.ValueType == "SCOORD":
        print("SCOORD", item.GraphicType, *[repr(float(v)) for v in item.GraphicData], sep="|")
    for child in item.get("ContentSequence", []):
        walk(child)

walk(pydicom.dcmread(sys.argv[1]))
