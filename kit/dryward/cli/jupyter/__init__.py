"""What the launcher gives to the Jupyter server: settings, a websocket, a small extension."""
