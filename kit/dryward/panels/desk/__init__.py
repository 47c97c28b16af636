"""The desk of a page that is worked on: sections under the picture, such as the layers of one's own roof."""
