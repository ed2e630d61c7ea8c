"""What can be asked for, a module to each kind of thing. All of it is listed in `api.app`."""
