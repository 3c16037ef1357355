"""Small pictures laid on films: side letters, words, numbers, arrows, rulers. No fonts are needed."""
import random

import torch

# Five columns per letter, lowest bit on top.
FONT = {
    "A": "7E1111117E", "B": "7F49494936", "C": "3E41414122", "D": "7F4141221C", "E": "7F49494941", "F": "7F09090901",
    "G": "3E4149497A", "H": "7F0808087F", "I": "00417F4100", "K": "7F08142241", "L": "7F40404040", "M": "7F020C027F",
    "N": "7F0408107F", "O": "3E4141413E", "P": "7F09090906", "R": "7F09192946", "S": "4649494931", "T": "01017F0101",
    "U": "3F4040403F", "V": "1F2040201F", "W": "3F4038403F", "X": "6314081463", "Y": "0708700807", "0": "3E5149453E",
    "1": "00427F4000", "2": "4261514946", "3": "2141454B31", "4": "1814127F10", "5": "2745454539", "6": "3C4A494930",
    "7": "0171090503", "8": "3649494936", "9": "064949291E", ":": "0036360000", "-": "0808080808", " ": "0000000000",
}
WORDS = ["L", "R", "LAT", "AP", "L LAT", "R ELBOW", "PORTABLE", "SUPINE", "12:45", "KV 55", "A", "B", "1", "2", "10 CM",
         "LEFT", "RIGHT", "ERECT", "IN CAST", "W 2048 L 1024", "2 OF 3", "XRAY ROOM 4", "OBL", "TRAUMA"]
TILE = 64


def text(word):
    columns = []
    for letter in word:
        code = FONT[letter]
        columns += [int(code[i:i + 2], 16) for i in range(0, 10, 2)] + [0]
    return torch.tensor([[(c >> row) & 1 for c in columns] for row in range(7)], dtype=torch.float32)


def enlarge(picture, times):
    return picture.repeat_interleave(times, 0).repeat_interleave(times, 1)


def place(tile, picture, top, left):
    h, w = min(picture.shape[0], TILE - top), min(picture.shape[1], TILE - left)
    tile[top:top + h, left:left + w] = torch.maximum(tile[top:top + h, left:left + w], picture[:h, :w])


def tile(chance):
    """One random picture [64, 64], 0…1."""
    out = torch.zeros(TILE, TILE)
    y, x = torch.meshgrid(torch.arange(TILE).float(), torch.arange(TILE).float(), indexing="ij")
    kind = chance.randrange(10)
    if kind < 6:
        word = chance.choice(WORDS)
        picture = enlarge(text(word), max(1, min(chance.randint(1, 7), 62 // (6 * len(word)))))
        if chance.random() < 0.15:
            picture = 1 - picture
        place(out, picture, chance.randint(1, 12), 1)
    elif kind == 6:
        radius, width = chance.uniform(8, 26), chance.uniform(1, 4)
        out = ((((x - 32) ** 2 + (y - 32) ** 2).sqrt() - radius).abs() < width).float()
        place(out, enlarge(text(chance.choice("LRAB")), 3), 22, 25)
    elif kind == 7:
        out[30:33, 8:50] = 1
        out = torch.maximum(out, ((x > 44) & (x < 60) & ((y - 31.5).abs() < (60 - x) / 2)).float())
    elif kind == 8:
        for i in range(10):
            out[20:20 + (20 if i % 5 == 0 else 10), 5 + 6 * i] = 1
        out[20, 5:60] = 1
    else:
        out = ((x - 32).abs() + (y - 32).abs() < chance.uniform(4, 20)).float()
    return out


def atlas(count, seed=1):
    """`count` pictures [count, 1, 64, 64]."""
    chance = random.Random(seed)
    return torch.stack([tile(chance) for _ in range(count)]).unsqueeze(1)
