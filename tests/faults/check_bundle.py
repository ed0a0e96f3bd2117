"""A second verifier of evidence bundles: Python's own library for hashes and zip, OpenSSL for the
signature. It shares no code with the product and follows RFC 9162 and the C2SP formats alone.
Exit code 0: all holds; 1: the message says what does not."""

import base64
import hashlib
import json
import os
import subprocess
import sys
import tempfile
import zipfile

ED25519_DER = bytes.fromhex("302a300506032b6570032100")


def fail(message):
    print(message)
    sys.exit(1)


def sha256(data):
    return hashlib.sha256(data).digest()


def inclusion_root(index, size, leaf, path):
    """The root that the path leads to (RFC 9162, 2.1.3.2), or None for a path of wrong length."""
    node, last, digest = index, size - 1, leaf
    for sibling in path:
        if last == 0:
            return None
        if node & 1 or node == last:
            digest = sha256(b"\x01" + sibling + digest)
            while not node & 1 and node:
                node, last = node >> 1, last >> 1
        else:
            digest = sha256(b"\x01" + digest + sibling)
        node, last = node >> 1, last >> 1
    return digest if last == 0 else None


def consistent(first, second, first_root, second_root, path):
    """RFC 9162, 2.1.4.2."""
    if first == second:
        return not path and first_root == second_root
    if first & (first - 1) == 0:
        path = [first_root] + path
    node, last = first - 1, second - 1
    while node & 1:
        node, last = node >> 1, last >> 1
    old = new = path[0]
    for sibling in path[1:]:
        if last == 0:
            return False
        if node & 1 or node == last:
            old, new = sha256(b"\x01" + sibling + old), sha256(b"\x01" + sibling + new)
            while not node & 1 and node:
                node, last = node >> 1, last >> 1
        else:
            new = sha256(b"\x01" + new + sibling)
        node, last = node >> 1, last >> 1
    return last == 0 and old == first_root and new == second_root


def openssl_verifies(public, message, signature):
    with tempfile.TemporaryDirectory() as folder:
        def write(name, data):
            path = os.path.join(folder, name)
            with open(path, "wb") as file:
                file.write(data)
            return path

        command = ["openssl", "pkeyutl", "-verify", "-pubin", "-keyform", "DER", "-rawin",
                   "-inkey", write("key", ED25519_DER + public),
                   "-in", write("message", message), "-sigfile", write("signature", signature)]
        return subprocess.run(command, capture_output=True).returncode == 0


def open_note(note, keys):
    """The text of a note that one of the keys signed."""
    text, _, lines = note.rpartition("\n\n")
    text += "\n"
    for line in lines.splitlines():
        _, name, encoded = line.split(" ")
        raw = base64.b64decode(encoded, validate=True)
        public = keys.get((name, raw[:4].hex()))
        if public is not None and openssl_verifies(public, text.encode(), raw[4:]):
            return text
    fail("a note is not signed by a key of the bundle")


def checkpoint_of(note, keys, origin):
    lines = open_note(note, keys).split("\n")
    if lines[0] != origin:
        fail("a checkpoint is of another log")
    return int(lines[1]), base64.b64decode(lines[2], validate=True)


def read_keys(text):
    keys = {}
    for line in text.splitlines():
        name, key_id, encoded = line.split("+", 2)
        raw = base64.b64decode(encoded, validate=True)
        if sha256(name.encode() + b"\n" + raw)[:4].hex() != key_id or raw[0] != 1:
            fail("a key does not have its id")
        keys[(name, key_id)] = raw[1:]
    return keys


def check(files):
    contents = json.loads(files["bundle.json"])
    keys = read_keys(files["keys.txt"].decode())
    note = files["checkpoint.txt"].decode()
    size, root = checkpoint_of(note, keys, contents["origin"])
    for stream in contents["streams"]:
        before = None
        for version, pos in enumerate(stream["positions"], 1):
            body = files["entries/%d.json" % pos]
            leaf = sha256(b"\x00" + body)
            head, _, proven = files["entries/%d.proof.txt" % pos].decode().partition("\n\n")
            lines = head.split("\n")
            path = [base64.b64decode(line, validate=True) for line in lines[2:]]
            entry = json.loads(body)
            good = (lines[0] == "c2sp.org/tlog-proof@v1" and lines[1] == "index %d" % (pos - 1)
                    and proven == note and inclusion_root(pos - 1, size, leaf, path) == root
                    and entry["log"] == contents["log"] and entry["stream"] == stream["stream"]
                    and entry["pos"] == pos and entry["version"] == version
                    and entry["prev"] == before)
            if not good:
                fail("position %d does not hold" % pos)
            before = leaf.hex()
        print("%d entries of %s" % (len(stream["positions"]), stream["stream"]))
    for earlier in contents["checkpoints"]:
        name = "checkpoints/%d" % earlier
        old_size, old_root = checkpoint_of(files[name + ".txt"].decode(), keys, contents["origin"])
        lines = files[name + ".consistency.txt"].decode().splitlines()
        path = [base64.b64decode(line, validate=True) for line in lines]
        if old_size != earlier or not consistent(earlier, size, old_root, root, path):
            fail("the log does not continue its checkpoint of %d entries" % earlier)
    for folder, key in (("documents", "documents"), ("attachments", "attachments")):
        for each in contents[key]:
            if "erasedAt" in each:
                continue
            if sha256(files["%s/%s" % (folder, each["name"])]).hex() != each["digest"]:
                fail("%s was altered" % each["name"])
    print("all holds")


try:
    with zipfile.ZipFile(sys.argv[1]) as bundle:
        check({name: bundle.read(name) for name in bundle.namelist()})
except (KeyError, ValueError, zipfile.BadZipFile, OSError, EOFError) as error:
    fail("damaged: %r" % error)
except Exception as error:  # zlib.error and the like
    fail("damaged: %r" % error)
