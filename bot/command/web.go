package command

import (
	"fmt"
	"io"
	"net"
	"sync/atomic"

	"example.org/netpost/bot/web"
	"example.org/netpost/casebook/demo"
)

// web opens the local web channel; nil where it is off. Alone with the
// terminal its address is printed, and where that of the settings' default is
// taken it is any free one.
func (s *service) web(local bool) (*web.Web, error) {
	c := s.config
	if c.Web == "" {
		return nil, nil
	}
	l, err := net.Listen("tcp", c.Web)
	if err != nil && c.File == "" {
		l, err = net.Listen("tcp", "127.0.0.1:0")
	}
	if err != nil {
		return nil, fmt.Errorf("web: %s can't be taken: %w; end what has it, name another address in the settings, or write off", c.Web, err)
	}
	a := home(c)
	o := web.Options{
		Listener: l, URL: c.WebURL, Token: c.WebToken.Reveal(), Name: a.Name, Code: a.Code,
		Find: s.bot.Find, Past: s.bot, Log: s.log.With("channel", "web"), Closed: closing / 2,
	}
	if n := s.library(a.ID); n != nil {
		o.Notes, o.Pages = linked{n, web.PagesPath}, s.pagesOf(a, n)
	}
	if c.File == "" && demo.Book().Association != nil {
		o.Name = demo.Book().Association.Name
	}
	w, err := web.New(o)
	if err != nil {
		_ = l.Close()
		return nil, err
	}
	s.page = w
	s.log.Info("the web channel is open", "address", w.Address())
	if local {
		fmt.Fprintf(s.world.Stdout, "In a browser: %s\n", w.Address())
	}
	return w, nil
}

// counted is an input that knows whether anything came in.
type counted struct {
	io.Reader
	n atomic.Int64
}

func (c *counted) Read(p []byte) (int, error) {
	n, err := c.Reader.Read(p)
	c.n.Add(int64(n))
	return n, err
}

func (c *counted) any() bool { return c.n.Load() > 0 }
