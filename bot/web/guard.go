package web

import (
	"crypto/hmac"
	"crypto/sha256"
	"crypto/subtle"
	"encoding/base64"
	"net/http"
	"net/url"
	"slices"
	"strings"
	"sync"
	"time"

	"example.org/netpost/bot/store"
)

// Headers of every answer: nothing comes from or goes to anywhere else, and no
// other site shows a page of ours in its own.
const policy = "default-src 'none'; style-src 'self'; script-src 'self'; img-src 'self' data:; connect-src 'self'; " +
	"form-action 'self'; base-uri 'none'; frame-ancestors 'none'"

const (
	cookieName = "netpost"
	cookieDays = 400 // as long as a browser keeps one
	maxBody    = 64 << 10
)

// session is a browser that comes in.
type session struct {
	secret string
	id     string // of the person
	fresh  bool   // its cookie is not set yet
}

// form is the token of this browser's forms. Another site can't know it, as it
// can't read the cookie.
func (s session) form() string { return tag(s.secret, "form") }

func tag(key, what string) string {
	m := hmac.New(sha256.New, []byte(key))
	m.Write([]byte(what))
	return base64.RawURLEncoding.EncodeToString(m.Sum(nil)[:18])
}

func same(a, b string) bool { return subtle.ConstantTimeCompare([]byte(a), []byte(b)) == 1 }

// guarded lets in what may come in. It checks on every request whom it is for
// and where it comes from: another site must not ask, press or read through
// somebody's browser, under whatever name it leads there.
func (w *Web) guarded(next http.Handler) http.Handler {
	return http.HandlerFunc(func(out http.ResponseWriter, r *http.Request) {
		if w.arrived != nil {
			w.arrived(1)
			defer w.arrived(-1)
		}
		h := out.Header()
		h.Set("Content-Security-Policy", policy)
		h.Set("X-Content-Type-Options", "nosniff")
		h.Set("Referrer-Policy", "same-origin")
		h.Set("Cross-Origin-Opener-Policy", "same-origin")
		h.Set("Cross-Origin-Resource-Policy", "same-origin")
		h.Set("Cache-Control", "no-store")
		if !slices.Contains(w.hosts, strings.ToLower(r.Host)) {
			w.fail(out, http.StatusMisdirectedRequest, "This address is not mine.", "Open "+w.Address())
			return
		}
		if !w.ours(r) {
			w.fail(out, http.StatusForbidden, "Another site sent this.", "Open "+w.Address()+" yourself and do it there.")
			return
		}
		r.Body = http.MaxBytesReader(out, r.Body, maxBody)
		next.ServeHTTP(out, r)
	})
}

// ours reports whether a request comes from a page of ours, or is somebody who
// opens one.
func (w *Web) ours(r *http.Request) bool {
	if o := r.Header.Get("Origin"); o != "" {
		u, err := url.Parse(o)
		if err != nil || !slices.Contains(w.hosts, strings.ToLower(u.Host)) {
			return false
		}
	}
	switch r.Header.Get("Sec-Fetch-Site") {
	case "", "none", "same-origin":
		return true
	}
	// A link on another site may lead here; nothing there may load, show or send.
	return (r.Method == http.MethodGet || r.Method == http.MethodHead) &&
		r.Header.Get("Sec-Fetch-Mode") == "navigate" && r.Header.Get("Sec-Fetch-Dest") == "document"
}

// session is the browser of a request; a new one where it brings no cookie
// that holds. It reports false where the access token was not given.
func (w *Web) session(r *http.Request) (session, bool) {
	if c, err := r.Cookie(cookieName); err == nil {
		secret, mark, _ := strings.Cut(c.Value, ".")
		if len(secret) == store.IDLen && (w.Token == "" || same(mark, tag(w.Token, secret))) {
			return session{secret: secret, id: w.person(secret)}, true
		}
	}
	secret := store.NewID()
	return session{secret: secret, id: w.person(secret), fresh: true}, w.Token == ""
}

// keep sets the cookie of a new browser.
func (w *Web) keep(out http.ResponseWriter, s session) {
	if !s.fresh {
		return
	}
	value := s.secret
	if w.Token != "" {
		value += "." + tag(w.Token, s.secret)
	}
	http.SetCookie(out, &http.Cookie{
		Name: cookieName, Value: value, Path: "/", MaxAge: cookieDays * 24 * 60 * 60,
		HttpOnly: true, Secure: w.secure, SameSite: http.SameSiteLaxMode,
	})
}

// page is a handler for somebody who may come in.
func (w *Web) page(next func(http.ResponseWriter, *http.Request, session)) http.HandlerFunc {
	return func(out http.ResponseWriter, r *http.Request) {
		s, may := w.session(r)
		if !may {
			w.writeStatus(out, http.StatusUnauthorized, "enter", frame{Title: "Access", Session: s})
			return
		}
		w.keep(out, s)
		next(out, r, s)
	}
}

// sent is a handler for a form of ours that was sent.
func (w *Web) sent(next func(http.ResponseWriter, *http.Request, session)) http.HandlerFunc {
	return w.page(func(out http.ResponseWriter, r *http.Request, s session) {
		switch err := r.ParseForm(); {
		case err != nil:
			w.fail(out, http.StatusRequestEntityTooLarge, "That is too long, or could not be read.", "Go back, and tell one play in a few sentences.")
		case s.fresh || !same(r.PostForm.Get("form"), s.form()):
			w.fail(out, http.StatusForbidden, "This page is not of this browser, or your browser keeps no cookies.",
				"Allow cookies for this address, load the page again and send it anew.")
		default:
			next(out, r, s)
		}
	})
}

// gate slows down whoever guesses the access token.
type gate struct{ mu sync.Mutex }

// wrongToken is what a wrong token costs; tries wait for one another.
const wrongToken = 500 * time.Millisecond

func (g *gate) open(given, token string) bool {
	g.mu.Lock()
	defer g.mu.Unlock()
	if same(given, token) {
		return true
	}
	time.Sleep(wrongToken)
	return false
}

// enter takes the access token.
func (w *Web) enter(out http.ResponseWriter, r *http.Request) {
	s, may := w.session(r)
	if err := r.ParseForm(); err != nil || !may && !w.gate.open(strings.TrimSpace(r.PostForm.Get("token")), w.Token) {
		w.writeStatus(out, http.StatusUnauthorized, "enter", frame{Title: "Access", Session: s, Trouble: "That is not the access token. Ask whoever runs netpost for it."})
		return
	}
	w.keep(out, s)
	http.Redirect(out, r, "/", http.StatusSeeOther)
}
