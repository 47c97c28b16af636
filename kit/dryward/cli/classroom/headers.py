"""What every answer of the pages tells the browser to keep to."""

from tornado.web import OutputTransform

#: Nothing from elsewhere, nothing into a frame, no camera or place.  Sliders and pictures need
#: styles within the page, scripts made from the kit's own text, and pictures made in the page.
RULES = {
    "Content-Security-Policy": "; ".join(
        (
            "default-src 'none'",
            "script-src 'self' blob:",
            "style-src 'self' 'unsafe-inline' blob:",
            "img-src 'self' data: blob:",
            "font-src 'self' data:",
            "connect-src 'self' blob: data:",
            "base-uri 'none'",
            "form-action 'self'",
            "frame-ancestors 'none'",
        )
    ),
    "X-Frame-Options": "DENY",
    "X-Content-Type-Options": "nosniff",
    "Referrer-Policy": "same-origin",
    "Cross-Origin-Opener-Policy": "same-origin",
    "Cross-Origin-Resource-Policy": "same-origin",
    "Permissions-Policy": "camera=(), geolocation=(), microphone=(), payment=(), usb=()",
}


class Rules(OutputTransform):
    """Puts the rules on every answer, whoever made it."""

    def transform_first_chunk(self, status_code, headers, chunk, finishing):
        """Before the first byte goes out."""
        for name, value in RULES.items():
            headers[name] = value
        headers.pop("Server", None)
        return status_code, headers, chunk
